/** The words a machine kind's data has for its ids; an id it does not know stands as it is, never left out. */
import type { Extent, FindingFields } from '#shared-types/finding.ts';
import type { KnowledgePack, PackComponent, PackZone } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import type { SeenTurning } from '#shared-types/rotation.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

type Place = Pick<FindingFields, 'component' | 'position' | 'zone'>;

function component(pack: KnowledgePack, id: string): PackComponent | undefined {
  return pack.components.find((entry) => entry.id === id);
}

function zone(pack: KnowledgePack, place: Place): PackZone | undefined {
  return component(pack, place.component)?.zones.find((entry) => entry.id === place.zone);
}

function labelIn(list: readonly { readonly id: string; readonly label: string }[], id: string): string {
  return list.find((entry) => entry.id === id)?.label ?? id;
}

/** "Thrust bearing", or "Journal bearing (turbine side)" where there are several. */
export function partLabel(pack: KnowledgePack, part: PartShown): string {
  const name = labelIn(pack.components, part.component);
  return part.position === null ? name : `${name} (${labelIn(pack.positions, part.position)})`;
}

/** Part and zone, "Thrust bearing, front pads". */
export function placeLabel(pack: KnowledgePack, place: Place): string {
  const part = partLabel(pack, place);
  return place.zone === null ? part : `${part}, ${zone(pack, place)?.label ?? place.zone}`;
}

/** The same where a line begins; an id that is not known is not touched. */
export function placeLabelAtStart(pack: KnowledgePack, place: Place): string {
  const label = placeLabel(pack, place);
  return component(pack, place.component) === undefined ? label : capitalised(label);
}

export function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function kindLabel(pack: KnowledgePack, kind: string): string {
  return labelIn(pack.kinds, kind);
}

export function sideLabel(pack: KnowledgePack, side: string): string {
  return labelIn(pack.sides, side);
}

/** "anticlockwise seen from the air inlet, along the axis" */
export function bendLabel(pack: KnowledgePack, bend: SeenTurning): string {
  return reportTexts.findings.bend(reportTexts.senses[bend.sense], sideLabel(pack, bend.seenFrom));
}

/** "3 of 3 pads", where the zone says what is counted. */
export function extentLabel(pack: KnowledgePack, place: Place, extent: Extent): string {
  return reportTexts.findings.extent(extent.affected, extent.of, zone(pack, place)?.counts ?? '');
}
