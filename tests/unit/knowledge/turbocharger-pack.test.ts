/**
 * The turbocharger as data. What is said here of its parts, of what can happen to them and of what they are
 * measured by is common practice, no source.
 */
import { describe, expect, test } from 'vitest';

import {
  componentOf,
  findingTitle,
  kindAndItsCases,
  kindsFor,
  zoneOf,
} from '#analysis/knowledge/pack-terms.ts';
import type { PackComponent, PackZone } from '#shared-types/knowledge-pack.ts';

import { turbocharger as pack } from './turbocharger-file.ts';

type ZoneOfPart = { readonly component: PackComponent; readonly zone: PackZone; readonly name: string };
const allZones: readonly ZoneOfPart[] = pack.components.flatMap((component) =>
  component.zones.map((zone) => ({ component, zone, name: `${component.id} / ${zone.id}` })),
);

/** Where any of the kinds can occur, as `component` of parts or `component / zone`, without repetition. */
function partsWith(...kinds: readonly string[]): string[] {
  return pack.components
    .filter((component) => kindsFor(pack, component.id, null).some(({ id }) => kinds.includes(id)))
    .map(({ id }) => id);
}
function zonesWith(...kinds: readonly string[]): string[] {
  return allZones.filter(({ zone }) => zone.kinds.some((id) => kinds.includes(id))).map(({ name }) => name);
}

describe('what the file says of itself', () => {
  test('is this machine kind, as common practice, without the weighing for now', () => {
    expect(pack).toMatchObject({ id: 'turbocharger', version: '0.3.0' });
    expect(pack.source).toMatch(/common practice/i);
    expect(pack.source).toMatch(/without a published source/);
    expect([pack.mechanisms, pack.conditions, pack.marks]).toEqual([[], [], []]);
  });
});

describe('words', () => {
  const labels = [
    ...pack.positions,
    ...pack.sides,
    ...pack.kinds,
    ...pack.components,
    ...pack.quantities,
    ...allZones.map(({ zone }) => zone),
  ].map(({ label }) => label);
  const meanings = [...pack.kinds, ...pack.quantities].map(({ meaning }) => meaning);

  test('labels are lower case and no sentences, so that they stand inside a line', () => {
    for (const label of labels) expect(label).toMatch(/^[a-z](?!.*\.$)/);
  });

  test('meanings are sentences', () => {
    for (const meaning of meanings) expect(meaning).toMatch(/^[A-Z].*\.$/);
  });

  test('are British', () => {
    for (const words of [...labels, ...meanings, pack.source]) {
      expect(words).not.toMatch(/\b(color|center|gray|caliber|fiber|aluminum|vise|gage|discolor\w*)\b/i);
    }
  });

  test('no two terms of one list are called the same', () => {
    const lists = [pack.positions, pack.sides, pack.kinds, pack.components, pack.quantities];
    for (const list of [...lists, ...pack.components.map((component) => component.zones)]) {
      expect(new Set(list.map(({ label }) => label)).size).toBe(list.length);
    }
  });

  test('make the title of a finding', () => {
    const terms = { component: 'journal-bearing', position: 'turbine-side', zone: 'bore', kind: 'scoring' };
    expect(findingTitle(pack, terms)).toBe('Journal bearing, turbine side, bore: scoring');
  });
});

describe('parts', () => {
  test('stand in the order of assembly, from the air inlet to the exhaust outlet', () => {
    const order = [
      'compressor-housing',
      'shaft-nut',
      'compressor-wheel',
      'back-plate',
      'seal-ring',
      'thrust-collar',
      'thrust-bearing',
      'thrust-washer',
      'centre-housing',
      'journal-bearing',
      'spacer',
      'shaft',
      'heat-shield',
      'turbine-wheel',
      'vane-ring',
      'turbine-housing',
      'actuator',
    ];
    const ids = pack.components.map(({ id }) => id);
    expect(ids.filter((id) => order.includes(id))).toEqual(order);
  });

  test('that come in pairs have a compressor side and a turbine side', () => {
    for (const id of ['journal-bearing', 'seal-ring']) {
      expect(componentOf(pack, id).positions).toEqual(['compressor-side', 'turbine-side']);
    }
    for (const id of ['shaft', 'compressor-wheel', 'turbine-wheel', 'thrust-bearing', 'centre-housing']) {
      expect(componentOf(pack, id).positions).toEqual([]);
    }
  });

  test('that not every variant has are optional; what every unit has is not', () => {
    const variants = [
      'shaft-nut',
      'journal-bearing',
      'thrust-bearing',
      'one-piece-bearing',
      'ball-bearing-cartridge',
      'vane-ring',
      'wastegate',
      'actuator',
    ];
    for (const id of variants) expect(componentOf(pack, id).optional).toBe(true);
    for (const id of ['compressor-housing', 'compressor-wheel', 'centre-housing', 'shaft', 'turbine-wheel']) {
      expect(componentOf(pack, id).optional).toBe(false);
    }
  });

  test('can each be missing, or be another than the right one', () => {
    for (const component of pack.components) {
      expect(component.kinds).toEqual(expect.arrayContaining(['not-present', 'part-not-original']));
    }
  });

  test('have blades, pads, vanes and holes to count where there are such', () => {
    const counted = (what: PackZone['counts']) =>
      allZones.filter(({ zone }) => zone.counts === what).map(({ component }) => component.id);
    expect(new Set(counted('blades'))).toEqual(new Set(['compressor-wheel', 'turbine-wheel']));
    expect(new Set(counted('pads'))).toEqual(new Set(['thrust-bearing', 'one-piece-bearing']));
    expect(new Set(counted('vanes'))).toEqual(new Set(['vane-ring']));
    expect(zoneOf(pack, 'thrust-bearing', 'oil-holes').counts).toBe('holes');
    expect(zoneOf(pack, 'turbine-wheel', 'nut-boss').counts).toBeNull();
  });
});

describe('kinds of damage', () => {
  test('are each possible somewhere', () => {
    const used = new Set(pack.components.flatMap(({ id }) => kindsFor(pack, id, null)).map(({ id }) => id));
    expect(pack.kinds.map(({ id }) => id).filter((id) => !used.has(id))).toEqual([]);
  });

  test('of a part as a whole are not said again at its zones', () => {
    const twice = allZones.filter(({ component, zone }) =>
      zone.kinds.some((kind) => component.kinds.includes(kind)),
    );
    expect(twice.map(({ name }) => name)).toEqual([]);
  });

  test('that are a case of a wider one are possible only where the wider one is', () => {
    const orphans = pack.components.flatMap((component) =>
      [null, ...component.zones.map(({ id }) => id)].flatMap((zone) => {
        const possible = kindsFor(pack, component.id, zone).map(({ id }) => id);
        return pack.kinds
          .filter(
            ({ id, narrows }) =>
              narrows !== undefined && possible.includes(id) && !possible.includes(narrows),
          )
          .map(({ id }) => `${component.id} / ${zone ?? '-'}: ${id}`);
      }),
    );
    expect(orphans).toEqual([]);
  });

  test('a rub on an arc and one all round are rubs, beach marks are a fracture, a twisted shaft is broken', () => {
    expect(kindAndItsCases(pack, 'rub')).toEqual(['rub', 'rub-on-arc', 'rub-full-ring']);
    expect(kindAndItsCases(pack, 'broken')).toEqual([
      'broken',
      'fatigue-fracture',
      'overload-fracture',
      'torsion-fracture',
    ]);
    expect(kindAndItsCases(pack, 'dent')).toEqual(['dent', 'imprint', 'nut-imprint']);
  });

  test('blades and vanes bend, nothing else does', () => {
    const bent = zonesWith('bent-over', 'bent-against-rotation', 'bent-with-rotation', 'smooth-bend');
    const bladed = allZones
      .filter(({ zone }) => zone.counts === 'blades' || zone.counts === 'vanes')
      .map(({ name }) => name);
    expect(bladed).toEqual(expect.arrayContaining(bent));
    expect(bent).toEqual(
      expect.arrayContaining([
        'compressor-wheel / leading-edges',
        'compressor-wheel / inducer-sides',
        'compressor-wheel / contour-edge',
        'turbine-wheel / inlet-tips',
        'turbine-wheel / contour-edge',
        'turbine-wheel / exducer-sides',
        'vane-ring / vanes',
      ]),
    );
  });

  test('what turns and what stands beside it can both be rubbed', () => {
    const pairs: readonly (readonly [string, string])[] = [
      ['compressor-wheel / inducer-sides', 'compressor-housing / inlet-bore'],
      ['compressor-wheel / contour-edge', 'compressor-housing / contour'],
      ['compressor-wheel / back-face', 'back-plate / front-face'],
      ['turbine-wheel / contour-edge', 'turbine-housing / contour'],
      ['turbine-wheel / exducer-sides', 'turbine-housing / outlet-bore'],
      ['turbine-wheel / back-disc', 'heat-shield / back'],
      ['shaft / journal-compressor-side', 'journal-bearing / bore'],
    ];
    for (const kind of ['rub', 'rub-on-arc', 'rub-full-ring']) {
      expect(zonesWith(kind)).toEqual(expect.arrayContaining(pairs.flat()));
    }
  });

  test('the nut leaves its imprint in the cold air path only', () => {
    expect(partsWith('nut-imprint')).toEqual(['compressor-housing', 'compressor-wheel']);
  });

  test('the compressor does not coke, and only the hot end cracks from heat', () => {
    expect(partsWith('coking')).not.toEqual(expect.arrayContaining(['compressor-wheel']));
    expect(partsWith('coking')).not.toEqual(expect.arrayContaining(['compressor-housing']));
    expect(partsWith('heat-crack')).toEqual([
      'centre-housing',
      'heat-shield',
      'turbine-wheel',
      'vane-ring',
      'turbine-housing',
      'wastegate',
    ]);
  });

  test('bearing metal is wiped where there is a bearing, or the shaft that runs in it', () => {
    expect(partsWith('wiped').sort()).toEqual(
      [
        'centre-housing',
        'journal-bearing',
        'one-piece-bearing',
        'shaft',
        'thrust-bearing',
        'thrust-collar',
        'thrust-washer',
      ].sort(),
    );
  });

  test('only the shaft is twisted off, only wheels and housings burst, only wheels creep', () => {
    expect(partsWith('torsion-fracture')).toEqual(['shaft']);
    expect(partsWith('burst')).toEqual([
      'compressor-housing',
      'compressor-wheel',
      'turbine-wheel',
      'turbine-housing',
    ]);
    expect(partsWith('creep-stretch')).toEqual(['turbine-wheel']);
  });

  test('ways through are blocked, solid faces are not', () => {
    for (const name of zonesWith('blocked', 'narrowed')) {
      expect(name).toMatch(
        /hole|groove|port|passage|pipe|union|gasket|screen|hose|valve|slot|oil-filter|air-filter|wall/,
      );
    }
    expect(zonesWith('kinked')).toEqual([
      'actuator / hose',
      'oil-feed / pipe',
      'oil-drain / pipe',
      'crankcase-breather / hose',
      'inlet-hose / wall',
    ]);
  });

  test('threads are damaged where there are threads', () => {
    expect(zonesWith('thread-damage')).toEqual([
      'compressor-housing / flanges',
      'shaft-nut / thread',
      'compressor-wheel / bore',
      'back-plate / rim',
      'centre-housing / oil-feed-port',
      'centre-housing / oil-drain-port',
      'centre-housing / flanges',
      'shaft / thread',
      'turbine-housing / flanges',
      'clamp / fasteners',
      'oil-feed / union',
    ]);
  });
});
