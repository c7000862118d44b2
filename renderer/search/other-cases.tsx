import { useLocation } from 'wouter';
import { searchTexts } from '#shared-types/texts/search.ts';
import type { Presence } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { lookForTagAlone } from './search-store.ts';

/** What is asked of a finding to look for its like; MatchedFinding has it, and so does a finding with its labels. */
export type DamageNamed = {
  /** Part and kind by their ids in the machine kind. */
  readonly componentId: string;
  readonly kindId: string;
  /** The same in words. */
  readonly component: string;
  readonly kind: string;
  readonly presence: Presence;
};

/**
 * Finds other cases with this damage, in one gesture: the search over all cases opens with its part, kind and presence
 * as the damage looked for, and nothing else.
 */
export function OtherCases({ finding }: { finding: DamageNamed }) {
  const [, navigate] = useLocation();
  const { componentId, kindId, presence } = finding;
  const damage = [
    searchTexts.tag(finding.component, finding.kind),
    ...(presence === 'present' ? [] : [commonTexts.presences[presence]]),
  ].join(', ');
  return (
    <Button
      kind="quiet"
      className="other-cases"
      aria-label={searchTexts.otherCasesLabel(damage)}
      onClick={() => {
        lookForTagAlone({ component: componentId, kind: kindId, zone: null, class: null, presence });
        navigate(searchAddress);
      }}
    >
      {searchTexts.otherCases}
    </Button>
  );
}
