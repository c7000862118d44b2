import type { DamageClass, Presence } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { Select } from '../ui/select.tsx';
import { leaveOutTag, lookForWordsOf, narrowTag, type ChosenTag } from './search-store.ts';
import type { TagLabels } from './tag-offer.ts';

const classes = Object.keys(commonTexts.damageClasses) as DamageClass[];
const presences = Object.keys(commonTexts.presences) as Presence[];

/** The damages looked for, each with the class and presence it must have. */
export function ChosenTags(props: { tags: readonly ChosenTag[]; labels: TagLabels }) {
  const { tags, labels } = props;
  return (
    <ul className="chosen-tags" aria-label={searchTexts.chosenTags}>
      {tags.map((tag) => {
        const name = searchTexts.tag(
          tag.component === null ? searchTexts.anyPart : labels.component(tag.component),
          tag.kind === null ? searchTexts.anyKind : labels.kind(tag.kind),
        );
        return (
          <li key={tag.key} className="chosen-tag">
            {tag.class === null ? null : <ClassBadge of={tag.class} />}
            <span className="chosen-tag-name">{name}</span>
            <Select
              label={searchTexts.classLabel(name)}
              labelHidden
              value={tag.class ?? ''}
              emptyChoice={searchTexts.anyClass}
              choices={classes.map((value) => ({ value, label: commonTexts.damageClasses[value] }))}
              onValue={(value) => narrowTag(tag.key, { class: value === '' ? null : value })}
            />
            <Select
              label={searchTexts.presenceLabel(name)}
              labelHidden
              value={tag.presence ?? ''}
              emptyChoice={searchTexts.anyPresence}
              choices={presences.map((value) => ({ value, label: commonTexts.presences[value] }))}
              onValue={(value) => narrowTag(tag.key, { presence: value === '' ? null : value })}
            />
            {tag.asWords === null ? null : (
              <Button
                kind="quiet"
                aria-label={searchTexts.asWordsLabel(tag.asWords)}
                onClick={() => lookForWordsOf(tag)}
              >
                {searchTexts.asWords}
              </Button>
            )}
            <Button
              kind="quiet"
              aria-label={searchTexts.removeTag(name)}
              onClick={() => leaveOutTag(tag.key)}
            >
              ×
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
