/** Every kind of mark with its rules: a kind without rules does not compile. */
import type { MarkGeometry, MarkKind } from '#shared-types/mark.ts';
import { arrowRules } from './arrow.ts';
import { dimensionRules } from './dimension.ts';
import { lineRules } from './line.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';
import { outlineRules } from './outline.ts';
import { rectangleRules } from './rectangle.ts';
import { ringRules } from './ring.ts';
import { scaleRules } from './scale.ts';
import { textRules } from './text.ts';

export type GeometryOf<Kind extends MarkKind> = Extract<MarkGeometry, { kind: Kind }>;

const rulesOfKind: { readonly [Kind in MarkKind]: MarkKindRules<GeometryOf<Kind>> } = {
  arrow: arrowRules,
  ring: ringRules,
  outline: outlineRules,
  line: lineRules,
  text: textRules,
  dimension: dimensionRules,
  scale: scaleRules,
  rectangle: rectangleRules,
};

/** In the order in which the tools stand. */
export const markKinds = [
  'arrow',
  'ring',
  'outline',
  'line',
  'text',
  'dimension',
  'scale',
  'rectangle',
] as const satisfies readonly MarkKind[];

/** The rules for a geometry; they must be given that geometry, or another of its kind. */
export function rulesFor(geometry: MarkGeometry): MarkKindRules<MarkGeometry> {
  return rulesOfKind[geometry.kind];
}
