import { Link } from 'wouter';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { shelfAddress } from './addresses.ts';

export function NotFound() {
  return (
    <section className="state-place">
      <h1>{shellTexts.notFound.title}</h1>
      <p className="state-words">{shellTexts.notFound.words}</p>
      <p>
        <Link href={shelfAddress}>{shellTexts.backToShelf}</Link>
      </p>
    </section>
  );
}
