import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shownGesture } from '#analysis/marks/gesture/well-state.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { markGeometrySchema, type MarkGeometry } from '#shared-types/mark.ts';
import { anyMark } from './any-mark.ts';
import { contentOf, markId } from './bench-gestures.ts';
import {
  after,
  afterAll,
  anyInput,
  anyTool,
  click,
  drag,
  enter,
  press,
  release,
  sceneOf,
  step,
  worldWith,
  type WellWorld,
} from './well-world.ts';

const drawnBy = (world: WellWorld) =>
  world.deeds.flatMap((deed) => (deed.deed === 'drawn' ? [deed.geometry] : []));
const asked = (world: WellWorld) => world.deeds.map(({ deed }) => deed).filter((deed) => deed !== 'say');
const geometryOf = (world: WellWorld, n: number) => world.bench.marks.get(markId(n))?.geometry;

const arrow: MarkGeometry = {
  kind: 'arrow',
  v: 1,
  tail: imagePoint(1000, 1000),
  tip: imagePoint(1400, 1000),
};
const line: MarkGeometry = { kind: 'line', v: 1, from: imagePoint(1000, 2000), to: imagePoint(1400, 2000) };
const words: MarkGeometry = { kind: 'text', v: 1, at: imagePoint(2500, 500), words: 'scored' };

describe('Escape', () => {
  it('at any moment of anything leaves no trace: no gesture, and marks as they were before it', () => {
    fc.assert(
      fc.property(
        fc.array(anyMark, { maxLength: 5 }),
        anyTool,
        fc.array(fc.nat(4), { maxLength: 3 }),
        fc.array(anyInput, { maxLength: 40 }),
        (marks, tool, picks, inputs) => {
          const chosen = new Set(picks.map(markId).filter((_, index) => index < marks.length));
          let world = worldWith(marks, { tool, chosen });
          for (const input of inputs) {
            world = after(world, input);
            const escaped = after(world, { input: 'escape' });
            expect(escaped.well.gesture).toBeNull();
            expect(shownGesture(escaped.well, sceneOf(escaped))).toBeNull();
            expect(contentOf(escaped.bench)).toEqual(contentOf(world.bench));
            expect(
              escaped.deeds
                .slice(world.deeds.length)
                .every(({ deed }) => deed === 'say' || deed === 'escape'),
            ).toBe(true);
          }
        },
      ),
    );
  });

  it('says that nothing is under way only when nothing is', () => {
    const world = worldWith([arrow], { tool: 'ring' });
    expect(asked(after(world, { input: 'escape' }))).toEqual(['escape']);
    expect(asked(afterAll(world, [press(100, 100), drag(900, 900), { input: 'escape' }]))).toEqual([]);
  });
});

describe('whatever is done', () => {
  it('every mark that comes of it can be stored', () => {
    fc.assert(
      fc.property(
        fc.array(anyMark, { maxLength: 4 }),
        anyTool,
        fc.array(anyInput, { maxLength: 60 }),
        (marks, tool, inputs) => {
          const world = afterAll(worldWith(marks, { tool, chosen: new Set([markId(0)]) }), inputs);
          for (const { geometry } of world.bench.marks.values()) {
            expect(markGeometrySchema.safeParse(geometry).error).toBeUndefined();
          }
        },
      ),
    );
  });

  it('a closed case keeps its marks', () => {
    fc.assert(
      fc.property(
        fc.array(anyMark, { maxLength: 4 }),
        anyTool,
        fc.array(anyInput, { maxLength: 40 }),
        (marks, tool, inputs) => {
          const before = worldWith(marks, { tool, readOnly: true, chosen: new Set([markId(0)]) });
          expect(contentOf(afterAll(before, inputs).bench)).toEqual(contentOf(before.bench));
        },
      ),
    );
  });
});

describe('drawing with the pointer', () => {
  const drawn = (tool: WellWorld['tool'], ...inputs: Parameters<typeof after>[1][]) =>
    drawnBy(afterAll(worldWith([], { tool }), inputs));

  it('an arrow goes from its tail to its tip', () => {
    expect(drawn('arrow', press(100, 200), drag(300, 300), release(500, 400))).toEqual([
      { kind: 'arrow', v: 1, tail: { x: 100, y: 200 }, tip: { x: 500, y: 400 } },
    ]);
  });

  it('a ring fills the box drawn from corner to corner, whichever comes first', () => {
    const ring = { kind: 'ring', v: 1, centre: { x: 300, y: 300 }, radiusX: 200, radiusY: 100, rotation: 0 };
    expect(drawn('ring', press(100, 200), release(500, 400))).toEqual([ring]);
    expect(drawn('ring', press(500, 400), release(100, 200))).toEqual([ring]);
  });

  it('a ring drawn with Shift is a circle, as large as the picture allows', () => {
    expect(drawn('ring', press(100, 200), release(500, 400, true))).toMatchObject([
      { radiusX: 200, radiusY: 200 },
    ]);
    expect(drawn('ring', press(100, 200), release(3000, 0, true))).toMatchObject([
      { radiusX: 100, radiusY: 100 },
    ]);
  });

  it('a click with a tool that drags, and a ring without width, draw nothing', () => {
    for (const tool of ['arrow', 'ring', 'line'] as const)
      expect(drawn(tool, ...click(500, 500))).toEqual([]);
    expect(drawn('ring', press(100, 200), release(500, 200))).toEqual([]);
  });

  it('an outline closes at its first corner, by Enter and by a double click', () => {
    const corners = [...click(100, 100), ...click(900, 100), ...click(900, 800)];
    const outline = {
      kind: 'outline',
      v: 1,
      corners: [
        { x: 100, y: 100 },
        { x: 900, y: 100 },
        { x: 900, y: 800 },
      ],
    };
    expect(drawn('outline', ...corners, ...click(110, 105))).toEqual([outline]);
    expect(drawn('outline', ...corners, enter)).toEqual([outline]);
    expect(drawn('outline', ...corners, { input: 'double', at: imagePoint(900, 800) })).toEqual([outline]);
  });

  it('the second press of a double click is no corner, and begins no other outline', () => {
    const again = { ...press(900, 800), again: true } as ReturnType<typeof press>;
    const three = [...click(100, 100), ...click(900, 100), ...click(900, 800)];
    const world = afterAll(worldWith([], { tool: 'outline' }), [...three, again, release(900, 800)]);
    expect(world.well.gesture).toMatchObject({ corners: { length: 3 } });
    const closed = afterAll(world, [{ input: 'double', at: imagePoint(900, 800) }, again]);
    expect(closed.well.gesture).toBeNull();
  });

  it('an outline has at least three corners, and Backspace takes the last one back', () => {
    const two = [...click(100, 100), ...click(900, 100)];
    expect(drawn('outline', ...two, enter)).toEqual([]);
    expect(drawn('outline', ...two, ...click(900, 800), { input: 'back' }, enter)).toEqual([]);
    expect(
      drawn('outline', ...two, ...click(5, 5), { input: 'back' }, ...click(900, 800), enter),
    ).toMatchObject([{ corners: [{ x: 100 }, { x: 900 }, { y: 800 }] }]);
  });

  it('an outline goes on after the picture was moved under it', () => {
    const pans = { ...press(2000, 2000), pans: true } as ReturnType<typeof press>;
    const world = afterAll(worldWith([], { tool: 'outline' }), [
      ...click(100, 100),
      ...click(900, 100),
      pans,
      drag(2400, 2000),
      release(2400, 2000),
      ...click(900, 800),
      enter,
    ]);
    expect(drawnBy(world)).toHaveLength(1);
    expect(world.deeds).toContainEqual({ deed: 'pan', byX: 100, byY: 0 });
  });

  it('words are asked for where one clicks, and nothing is drawn yet', () => {
    const world = afterAll(worldWith([], { tool: 'text' }), click(700, 300));
    expect(world.deeds).toEqual([{ deed: 'write', at: { x: 700, y: 300 } }]);
  });
});

describe('drawing with the keyboard', () => {
  const drawn = (tool: WellWorld['tool'], ...inputs: Parameters<typeof after>[1][]) =>
    drawnBy(afterAll(worldWith([], { tool }), inputs));
  // The cross begins in the middle and goes 2 CSS pixels, 8 of the picture, a step.

  it('an arrow and a line: Enter at each end', () => {
    const ends = [step(-10, 0), enter, step(10, 10), enter] as const;
    expect(drawn('arrow', ...ends)).toEqual([
      { kind: 'arrow', v: 1, tail: { x: 1920, y: 1500 }, tip: { x: 2000, y: 1580 } },
    ]);
    expect(drawn('line', ...ends)).toEqual([
      { kind: 'line', v: 1, from: { x: 1920, y: 1500 }, to: { x: 2000, y: 1580 } },
    ]);
  });

  it('a ring: Enter at the middle, Enter at the rim', () => {
    expect(drawn('ring', step(0, 0), enter, step(3, 4), enter)).toEqual([
      { kind: 'ring', v: 1, centre: { x: 2000, y: 1500 }, radiusX: 40, radiusY: 40, rotation: 0 },
    ]);
    expect(drawn('ring', step(0, 0), enter, enter)).toEqual([]);
  });

  it('an outline: Enter at each corner, Enter again without moving closes it', () => {
    const three = [step(0, 0), enter, step(10, 0), enter, step(0, 10), enter] as const;
    const corners = [
      { x: 2000, y: 1500 },
      { x: 2080, y: 1500 },
      { x: 2080, y: 1580 },
    ];
    expect(drawn('outline', ...three)).toEqual([]);
    expect(drawn('outline', ...three, enter)).toEqual([{ kind: 'outline', v: 1, corners }]);
    expect(drawn('outline', ...three, step(-10, -10), enter)).toEqual([{ kind: 'outline', v: 1, corners }]);
  });

  it('words: Enter at their place', () => {
    expect(asked(afterAll(worldWith([], { tool: 'text' }), [step(1, 0), enter]))).toEqual(['show', 'write']);
  });
});

describe('choosing', () => {
  const three = worldWith([arrow, line, words]);

  it('a click chooses one, Shift and a click one more or fewer, the ground none', () => {
    const one = afterAll(three, click(1200, 1000));
    expect([...one.chosen]).toEqual([markId(0)]);
    const two = afterAll(one, click(1200, 2000, true));
    expect([...two.chosen]).toEqual([markId(0), markId(1)]);
    expect([...afterAll(two, click(1200, 1000, true)).chosen]).toEqual([markId(1)]);
    expect([...afterAll(two, click(3500, 2800)).chosen]).toEqual([]);
    expect([...afterAll(two, click(1200, 1000)).chosen]).toEqual([markId(0)]);
  });

  it('a box drawn with Shift adds what lies in it, and moves nothing', () => {
    const boxed = afterAll(three, [press(900, 900, true), drag(1500, 2100, true), release(1500, 2100, true)]);
    expect([...boxed.chosen]).toEqual([markId(0), markId(1)]);
    expect(contentOf(boxed.bench)).toEqual(contentOf(three.bench));
  });

  it('dragging one of several moves all of them, in one deed', () => {
    const both = worldWith([arrow, line], { chosen: new Set([markId(0), markId(1)]) });
    const moved = afterAll(both, [press(1200, 1000), drag(1250, 1010), release(1300, 1040)]);
    expect(asked(moved)).toEqual(['reshaped']);
    expect(geometryOf(moved, 0)).toMatchObject({ tail: { x: 1100, y: 1040 } });
    expect(geometryOf(moved, 1)).toMatchObject({ from: { x: 1100, y: 2040 } });
  });

  it('a hand that trembles while it clicks moves nothing', () => {
    const clicked = afterAll(three, [press(1200, 1000), drag(1208, 1004), release(1208, 1004)]);
    expect(contentOf(clicked.bench)).toEqual(contentOf(three.bench));
    expect([...clicked.chosen]).toEqual([markId(0)]);
  });

  it('the arrow keys move what is chosen, and all of it is one deed when they are let go', () => {
    const both = worldWith([arrow, line], { chosen: new Set([markId(0), markId(1)]) });
    const moved = afterAll(both, [step(1, 0), step(1, 0), step(0, 10), { input: 'steps-end' }]);
    expect(asked(moved).filter((deed) => deed !== 'show')).toEqual(['reshaped']);
    expect(geometryOf(moved, 0)).toMatchObject({ tip: { x: 1408, y: 1040 } });
    expect(geometryOf(moved, 1)).toMatchObject({ to: { x: 1408, y: 2040 } });
  });

  it('Enter goes round the handles of the mark that alone is chosen, Shift and Enter back', () => {
    const alone = worldWith([arrow], { chosen: new Set([markId(0)]) });
    const holds = (world: WellWorld) => world.well.hold?.hold;
    expect(holds(after(alone, enter))).toBe('tip');
    expect(holds(afterAll(alone, [enter, enter]))).toBe('tail');
    expect(holds(afterAll(alone, [enter, enter, enter]))).toBe('whole');
    expect(holds(after(alone, { input: 'enter', backwards: true }))).toBe('tail');
    const moved = afterAll(alone, [enter, step(5, 0), { input: 'leave' }]);
    expect(geometryOf(moved, 0)).toEqual({ ...arrow, tip: { x: 1420, y: 1000 } });
  });

  it('words are written again by a double click on them, and by Enter when chosen', () => {
    const chosen = worldWith([words], { chosen: new Set([markId(0)]) });
    expect(after(chosen, enter).deeds).toEqual([{ deed: 'rewrite', id: markId(0) }]);
    const double = after(worldWith([words]), { input: 'double', at: imagePoint(2520, 490) });
    expect(double.deeds).toEqual([{ deed: 'rewrite', id: markId(0) }]);
    expect(after(worldWith([words]), { input: 'double', at: imagePoint(50, 2900) }).deeds).toEqual([
      { deed: 'fit' },
    ]);
  });
});

describe('another tool', () => {
  it('drops what was being drawn with the one before', () => {
    const world = afterAll(worldWith([], { tool: 'outline' }), [...click(100, 100), ...click(900, 100)]);
    const ring = afterAll({ ...world, tool: 'ring' }, [press(100, 100), release(500, 500)]);
    expect(drawnBy(ring)).toMatchObject([{ kind: 'ring' }]);
    expect(afterAll({ ...ring, tool: 'outline' }, [enter]).well.gesture).toBeNull();
  });
});
