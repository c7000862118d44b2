import { galleryTexts } from '#shared-types/texts/gallery.ts';
import { GallerySection } from './gallery-section.tsx';

const colours = [
  'bench',
  'sheet',
  'raised',
  'hover',
  'rule',
  'rule-strong',
  'ink',
  'ink-2',
  'ink-3',
  'accent',
  'accent-strong',
  'accent-weak',
  'well',
  'primary',
  'secondary',
  'unrelated',
  'undecided',
  'ok',
  'warn',
  'bad',
  'found',
] as const;
const gaps = ['s1', 's2', 's3', 's4', 's5', 's6', 'control', 'row', 'header'] as const;

/** Type, colours and measures by the names of their tokens. */
export function GalleryFoundations() {
  const { sections, typeLines } = galleryTexts;
  return (
    <>
      <GallerySection title={sections.type}>
        <div className="gallery-type">
          <p className="gallery-type-head">{typeLines.head}</p>
          <p>
            <strong>{typeLines.strong}</strong>
          </p>
          <p>{typeLines.text}</p>
          <p className="secondary-words">{typeLines.secondary}</p>
          <p className="said">{typeLines.said}</p>
          <p className="gallery-type-serif">{typeLines.serif}</p>
        </div>
      </GallerySection>
      <GallerySection title={sections.colours}>
        {colours.map((name) => (
          <span key={name} className="gallery-colour">
            <i style={{ background: `var(--${name})` }} />
            {name}
          </span>
        ))}
      </GallerySection>
      <GallerySection title={sections.spacing}>
        {gaps.map((name) => (
          <span key={name} className="gallery-gap">
            <i style={{ width: `var(--${name})` }} />
            {name}
          </span>
        ))}
      </GallerySection>
    </>
  );
}
