import { Link } from 'wouter';
import { commonTexts } from '#shared-types/texts/common.ts';
import { FindBox } from '../search/find-box.tsx';
import { shelfAddress } from './addresses.ts';
import { LibraryBadge } from './library-badge.tsx';
import { ProgramButtons } from './program-buttons.tsx';

/** The header where no case is open. */
export function ProgramHeader({ wideFind = false }: { wideFind?: boolean }) {
  return (
    <>
      <Link className="header-number header-home" href={shelfAddress}>
        {commonTexts.programName}
      </Link>
      <LibraryBadge />
      <span className="header-gap" />
      <FindBox wide={wideFind} />
      <ProgramButtons />
    </>
  );
}
