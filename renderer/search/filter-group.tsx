import { useId, useRef, useState, type KeyboardEvent } from 'react';
import { damageClasses, presences, type DamageClass } from '#shared-types/finding.ts';
import type { FilterCount, FilterCounts, FilterName } from '#shared-types/search.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { ClassBadge } from '../ui/class-badge.tsx';
import { numberText } from '../ui/number-words.ts';
import { valueLabel } from './filter-words.ts';
import { chooseFilter } from './search-store.ts';

const shownAtFirst = 6;

/**
 * The values of one filter with the cases that each would leave. One stop of the Tab key: within the group the arrow
 * keys walk, Space chooses.
 */
export function FilterGroup(props: {
  name: FilterName;
  counts: FilterCounts | undefined;
  chosen: readonly string[];
}) {
  const { name, counts, chosen } = props;
  const id = useId();
  const group = useRef<HTMLFieldSetElement>(null);
  const [all, setAll] = useState(false);
  const [stop, setStop] = useState<string | null>(null);
  const values = shownValues(name, counts?.values ?? [], chosen);
  const shown = all
    ? values
    : values.filter((one, place) => place < shownAtFirst || chosen.includes(one.value));
  const rarer = counts?.more ?? 0;
  const tabStop = shown.some(({ value }) => value === stop) ? stop : (shown[0]?.value ?? null);

  const onKeyDown = (event: KeyboardEvent<HTMLFieldSetElement>) => {
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
    if (step === undefined || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const boxes = [...(group.current?.querySelectorAll<HTMLInputElement>('input') ?? [])];
    boxes[(boxes.indexOf(event.target) + step + boxes.length) % boxes.length]?.focus();
  };

  if (shown.length === 0) return null;
  return (
    <fieldset ref={group} className="filter-group" onKeyDown={onKeyDown}>
      <legend>{searchTexts.filters[name]}</legend>
      {name === 'presence' ? <p className="panel-note">{searchTexts.presenceNote}</p> : null}
      {shown.map((one) => (
        <FilterValue
          key={one.value}
          id={`${id}-${one.value}`}
          name={name}
          one={one}
          chosen={chosen.includes(one.value)}
          tabStop={one.value === tabStop}
          onFocus={() => setStop(one.value)}
        />
      ))}
      {values.length > shown.length || (all && values.length > shownAtFirst) ? (
        <button type="button" className="filter-more" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? searchTexts.fewerValues : searchTexts.moreValues(numberText(values.length - shown.length))}
        </button>
      ) : null}
      {all && rarer > 0 ? (
        <p className="secondary-words">{searchTexts.rarerValues(numberText(rarer))}</p>
      ) : null}
    </fieldset>
  );
}

function FilterValue(props: {
  id: string;
  name: FilterName;
  one: FilterCount;
  chosen: boolean;
  tabStop: boolean;
  onFocus: () => void;
}) {
  const { id, name, one, chosen, tabStop, onFocus } = props;
  const label = valueLabel(name, one);
  return (
    <div className={isQuarter(name, one.value) ? 'filter-value filter-quarter' : 'filter-value'}>
      <input
        id={id}
        type="checkbox"
        checked={chosen}
        tabIndex={tabStop ? 0 : -1}
        aria-label={searchTexts.filterValue(label, numberText(one.cases), one.cases === 1)}
        onChange={(event) => chooseFilter(name, one.value, event.currentTarget.checked)}
        onFocus={onFocus}
      />
      <label htmlFor={id}>
        <span className="filter-label">
          {name === 'class' && Object.hasOwn(commonTexts.damageClasses, one.value) ? (
            <span aria-hidden="true">
              <ClassBadge of={one.value as DamageClass} />{' '}
            </span>
          ) : null}
          {label}
        </span>
        <span className="filter-count">{numberText(one.cases)}</span>
      </label>
    </div>
  );
}

const isQuarter = (name: FilterName, value: string) => name === 'period' && value.includes('-');

/** Few and well known: they stay where they are, whatever they count. */
const orderOf: Partial<Record<FilterName, readonly string[]>> = { class: damageClasses, presence: presences };

/** Quarters stand below their year, where it or one of them is chosen. */
function shownValues(
  name: FilterName,
  values: readonly FilterCount[],
  chosen: readonly string[],
): readonly FilterCount[] {
  const inOrder = orderOf[name];
  if (inOrder !== undefined) {
    return [...values].sort((one, other) => inOrder.indexOf(one.value) - inOrder.indexOf(other.value));
  }
  if (name !== 'period') return values;
  const open = new Set(chosen.map((period) => period.slice(0, 4)));
  const years = values.filter(({ value }) => !value.includes('-'));
  return years.flatMap((year) => [
    year,
    ...(open.has(year.value)
      ? values.filter(({ value }) => value.startsWith(`${year.value}-`)).reverse()
      : []),
  ]);
}
