/** A bench for the well's machine: it does the deeds on a state of its own, as the page does. */
import fc from 'fast-check';
import { drawnMark, reshapedMarks } from '#analysis/marks/bench-deeds.ts';
import { applyPatches, emptyBench, type BenchState } from '#analysis/marks/bench-state.ts';
import { tools, type Tool } from '#analysis/marks/gesture/gesture.ts';
import { stepWell } from '#analysis/marks/gesture/well.ts';
import {
  restingWell,
  type WellDeed,
  type WellInput,
  type WellScene,
  type WellState,
} from '#analysis/marks/gesture/well-state.ts';
import { imageToScreen, imagePoint, screenPoint } from '#analysis/marks/planes.ts';
import { marksOnPhoto } from '#analysis/report/mark-labels.ts';
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import { ground, image } from './any-mark.ts';
import { markId, photoId } from './bench-gestures.ts';

export type WellWorld = {
  readonly well: WellState;
  readonly bench: BenchState;
  readonly chosen: ReadonlySet<MarkId>;
  readonly tool: Tool;
  readonly readOnly: boolean;
  /** Everything that came of the inputs so far. */
  readonly deeds: readonly WellDeed[];
};

export function worldWith(geometries: readonly MarkGeometry[], more: Partial<WellWorld> = {}): WellWorld {
  const bench = geometries.reduce(
    (state, geometry, index) => applyPatches(state, drawnMark(state, markId(index), photoId, geometry)),
    emptyBench,
  );
  return {
    well: restingWell,
    bench,
    chosen: new Set(),
    tool: 'select',
    readOnly: false,
    deeds: [],
    ...more,
  };
}

export function sceneOf({ bench, chosen, tool, readOnly }: WellWorld): WellScene {
  const marks = marksOnPhoto([...bench.marks.values()], photoId).map(({ id, geometry }) => ({
    id,
    geometry,
    look: { class: 'primary', label: 'P 1.1', unit: ground.unit, within: image } as const,
  }));
  return { tool, readOnly, ground, marks, chosen };
}

export function after(world: WellWorld, input: WellInput): WellWorld {
  const { state, deeds } = stepWell(world.well, input, sceneOf(world));
  return deeds.reduce<WellWorld>(carryOut, { ...world, well: state, deeds: [...world.deeds, ...deeds] });
}

export function afterAll(world: WellWorld, inputs: readonly WellInput[]): WellWorld {
  return inputs.reduce(after, world);
}

function carryOut(world: WellWorld, deed: WellDeed): WellWorld {
  switch (deed.deed) {
    case 'drawn': {
      const id = markId(100 + world.deeds.length);
      const bench = applyPatches(world.bench, drawnMark(world.bench, id, photoId, deed.geometry));
      return { ...world, bench };
    }
    case 'reshaped':
      return { ...world, bench: applyPatches(world.bench, reshapedMarks(world.bench, deed.changes)) };
    case 'choose': {
      const next = new Set(deed.how === 'only' ? [] : world.chosen);
      for (const id of deed.ids) {
        if (deed.how === 'toggle' && next.has(id)) next.delete(id);
        else next.add(id);
      }
      return { ...world, chosen: next };
    }
    default:
      return world;
  }
}

/** A place on the photo as the pointer meets it; the picture lies with its corner at that of the well. */
export function place(x: number, y: number, shift = false) {
  const at = imagePoint(x, y);
  return { at, on: imageToScreen({ scale: 1 / ground.unit, origin: screenPoint(0, 0) }, at), shift };
}

export const press = (x: number, y: number, shift = false): WellInput => ({
  input: 'press',
  ...place(x, y, shift),
  pans: false,
  again: false,
});
export const drag = (x: number, y: number, shift = false): WellInput => ({
  input: 'drag',
  ...place(x, y, shift),
});
export const release = (x: number, y: number, shift = false): WellInput => ({
  input: 'release',
  ...place(x, y, shift),
});
export const click = (x: number, y: number, shift = false): WellInput[] => [
  press(x, y, shift),
  release(x, y, shift),
];
export const step = (byX: number, byY: number): WellInput => ({
  input: 'step',
  byX,
  byY,
  start: imagePoint(2000, 1500),
});
export const enter: WellInput = { input: 'enter', backwards: false };

const coordinate = fc.tuple(fc.nat(image.width), fc.nat(image.height), fc.boolean());
export const anyInput: fc.Arbitrary<WellInput> = fc.oneof(
  coordinate.map(([x, y, shift]) => press(x, y, shift)),
  coordinate.map(([x, y]): WellInput => ({ input: 'press', ...place(x, y), pans: true, again: false })),
  coordinate.map(([x, y, shift]) => drag(x, y, shift)),
  coordinate.map(([x, y, shift]) => release(x, y, shift)),
  coordinate.map(([x, y]): WellInput => ({ input: 'hover', at: imagePoint(x, y) })),
  coordinate.map(([x, y]): WellInput => ({ input: 'double', at: imagePoint(x, y) })),
  fc.tuple(fc.integer({ min: -10, max: 10 }), fc.integer({ min: -10, max: 10 })).map(([x, y]) => step(x, y)),
  fc.constantFrom<WellInput>(enter, { input: 'enter', backwards: true }, { input: 'back' }),
  fc.constantFrom<WellInput>({ input: 'steps-end' }, { input: 'leave' }),
);
export const anyTool = fc.constantFrom(...tools);
