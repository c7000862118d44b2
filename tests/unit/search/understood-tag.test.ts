/** Words typed and Enter: the tag that they name, or none. */
import { describe, expect, test } from 'vitest';

import { isWholeDamage, understoodTag } from '#analysis/search/understood-tag.ts';
import type { KnownTag } from '#shared-types/search.ts';
import { searchTexts } from '#shared-types/texts/search.ts';

const tag = (component: string, kind: string): KnownTag => ({
  component,
  componentLabel: component.replaceAll('-', ' '),
  kind,
  kindLabel: kind.replaceAll('-', ' '),
  cases: 3,
});
const known = [
  tag('thrust-bearing', 'worn-away'),
  tag('shaft-nut', 'not-present'),
  tag('shaft-nut', 'loose'),
  tag('shaft', 'heat-tint'),
  tag('housing', 'rub'),
  tag('housing', 'rub-on-arc'),
];
const understood = (text: string) => understoodTag(text, known, searchTexts.typedNames);
const nothing = { component: null, zone: null, kind: null, class: null, presence: null };

describe('words of part, kind, class and presence', () => {
  test.each([
    ['a kind and a class', 'worn away primary', { kind: 'worn-away', class: 'primary' }, ''],
    ['a part alone', 'Shaft', { component: 'shaft' }, ''],
    [
      'part and kind, in whatever order and case',
      'WORN AWAY thrust bearing',
      { component: 'thrust-bearing', kind: 'worn-away' },
      '',
    ],
    ['the longer part before the shorter', 'shaft nut loose', { component: 'shaft-nut', kind: 'loose' }, ''],
    ['the longer kind before the shorter', 'rub on arc', { kind: 'rub-on-arc' }, ''],
    [
      'a kind before the presence that is a word of it',
      'shaft nut not present',
      { component: 'shaft-nut', kind: 'not-present' },
      '',
    ],
    ['absent', 'heat tint absent', { kind: 'heat-tint', presence: 'looked-for-absent' }, ''],
    ['not examined', 'heat-tint not examined', { kind: 'heat-tint', presence: 'not-examined' }, ''],
    [
      'what else was typed stays',
      'skerry worn away secondary 30771',
      { kind: 'worn-away', class: 'secondary' },
      'skerry 30771',
    ],
    ['a phrase is left as it is', '"came loose" worn away', { kind: 'worn-away' }, '"came loose"'],
  ])('%s', (_name, text, expected, rest) => {
    expect(understood(text)).toMatchObject({ tag: { ...nothing, ...expected }, rest });
  });

  test.each([
    ['a class alone', 'primary'],
    ['the beginning of a kind', 'worn'],
    ['words of a kind apart', 'worn bearing away'],
    ['in quotes', '"worn away" primary'],
    ['a part and a kind that no finding has together', 'shaft worn away'],
    ['nothing', ''],
  ])('are not seen in %s', (_name, text) => {
    expect(understood(text)).toBeNull();
  });

  test('are a damage and nothing else where part and kind are named and no word is left', () => {
    const whole = (text: string) => isWholeDamage(understood(text)!);
    expect(whole('shaft nut loose')).toBe(true);
    expect(whole('thrust bearing worn away primary')).toBe(true);
    // As in a claim that is looked for by its own words.
    expect(whole('loose')).toBe(false);
    expect(whole('the shaft nut came loose')).toBe(false);
  });

  test('can be taken back as words, part and kind as phrases, and are then not understood again', () => {
    const words = understood('thrust bearing worn away primary')!.asWords;
    expect(words).toBe('"thrust bearing" "worn away" primary');
    expect(understood(words)).toBeNull();
  });
});
