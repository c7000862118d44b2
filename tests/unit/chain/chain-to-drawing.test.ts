import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainContent, type ChainContent } from '#analysis/chain/chain-content.ts';
import type { Box, Spot } from '#analysis/chain/chain-layout.ts';
import {
  chainToDrawing,
  figureDrawing,
  figureWithNotes,
  type ChainFigure,
} from '#analysis/chain/chain-to-drawing.ts';
import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import { classStyles } from '#shared-types/class-style.ts';
import { damageClasses } from '#shared-types/finding.ts';
import {
  acyclicContent,
  caseFinding,
  chainOf,
  claimNode,
  leads,
  link,
  ofFinding,
  root,
  subjectOf,
  written,
} from './a-chain.ts';

const runs = { numRuns: 50 };

function overlap(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}

const nodeOf = (figure: ChainFigure, id: string) => {
  const node = figure.nodes.find((one) => one.id === id);
  if (node === undefined) throw new Error(`${id} was not drawn`);
  return node;
};
const isOn = (value: number, from: number, length: number) => value > from && value < from + length;

describe('the layout of any chain', () => {
  it('keeps every box and every word of a link inside the figure', () => {
    fc.assert(
      fc.property(acyclicContent, (content) => {
        const figure = chainToDrawing(content);
        expect(figure.nodes).toHaveLength(content.nodes.length);
        expect(figure.links).toHaveLength(content.links.length);
        for (const box of [...figure.nodes, ...figure.links.map((one) => one.label)]) {
          expect(box.x).toBeGreaterThanOrEqual(0);
          expect(box.y).toBeGreaterThanOrEqual(0);
          expect(box.x + box.width).toBeLessThanOrEqual(figure.width + 1e-6);
          expect(box.y + box.height).toBeLessThanOrEqual(figure.height + 1e-6);
        }
      }),
      runs,
    );
  });

  it('lays no box over another, and no words of a link over a box', () => {
    fc.assert(
      fc.property(acyclicContent, (content) => {
        const { nodes, links } = chainToDrawing(content);
        const boxes: readonly Box[] = nodes;
        for (const [index, box] of boxes.entries()) {
          for (const other of boxes.slice(index + 1)) expect(overlap(box, other)).toBe(false);
          for (const { label } of links) expect(overlap(box, label)).toBe(false);
        }
      }),
      runs,
    );
  });

  it('lets every link begin on the right edge of its cause and end on the left edge of its effect', () => {
    fc.assert(
      fc.property(acyclicContent, (content) => {
        const figure = chainToDrawing(content);
        for (const { causeId, effectId, points } of figure.links) {
          const cause = nodeOf(figure, causeId);
          const effect = nodeOf(figure, effectId);
          const [from, to] = [points[0], points.at(-1)] as [Spot, Spot];
          expect(from.x).toBeCloseTo(cause.x + cause.width, 6);
          expect(isOn(from.y, cause.y, cause.height)).toBe(true);
          expect(to.x).toBeCloseTo(effect.x, 6);
          expect(isOn(to.y, effect.y, effect.height)).toBe(true);
          expect(effect.x).toBeGreaterThan(cause.x + cause.width);
          const xs = points.map((point) => point.x);
          expect([...xs].sort((one, other) => one - other)).toEqual(xs);
        }
      }),
      runs,
    );
  });

  it('leads no line through a box, nor through the words of another link', () => {
    fc.assert(
      fc.property(acyclicContent, (content) => {
        const figure = chainToDrawing(content);
        for (const { id, points } of figure.links) {
          const others = figure.links.filter((other) => other.id !== id).map((other) => other.label);
          for (const [index, from] of points.slice(0, -1).entries()) {
            const to = points[index + 1] ?? from;
            for (const box of [...figure.nodes, ...others]) {
              const [top, foot] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
              const beside = to.x <= box.x + 1e-6 || from.x >= box.x + box.width - 1e-6;
              expect(beside || foot < box.y || top > box.y + box.height).toBe(true);
            }
          }
        }
      }),
      runs,
    );
  });

  it('is the same in whatever order the chain was drawn', () => {
    const shuffled = acyclicContent.chain((content) =>
      fc.tuple(
        fc.constant(content),
        fc.record({
          nodes: fc.shuffledSubarray([...content.nodes], { minLength: content.nodes.length }),
          links: fc.shuffledSubarray([...content.links], { minLength: content.links.length }),
        }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([content, again]) => {
        expect(chainToDrawing(again)).toEqual(chainToDrawing(content));
      }),
      runs,
    );
  });

  it('refuses a loop and a link to nothing', () => {
    const nodes = chainContent(chainOf([root('a'), written('b')]), subjectOf()).nodes;
    const drawn = (links: ChainContent['links']) => () => chainToDrawing({ nodes, links });
    expect(drawn(leads('a b', 'b a'))).toThrow(RangeError);
    expect(drawn(leads('a c'))).toThrow(RangeError);
    expect(chainToDrawing({ nodes: [], links: [] })).toMatchObject({ width: 0, height: 0, nodes: [] });
  });
});

/** One of each kind, each class, each certainty. */
const findings = [
  ...damageClasses.map((damageClass, index) => caseFinding(index + 1, { class: damageClass })),
  caseFinding(5, { presence: 'looked-for-absent' }),
];
const whole = chainContent(
  chainOf(
    [
      root('grit'),
      written('wear', 'condition'),
      written('touch'),
      claimNode,
      ...findings.map((one) => ofFinding(one.number)),
    ],
    [
      link('grit f1', { certainty: 'established', reason: '' }),
      link('f1 wear', { certainty: 'likely', reason: 'short' }),
      link('wear touch', { certainty: 'possible', reason: 'a reason that is long '.repeat(12) }),
      ...leads('touch f2', 'f2 claim', 'f5 claim'),
    ],
  ),
  subjectOf(...findings),
);
const figure = chainToDrawing(whole);
const { drawing, width, height } = figureWithNotes(figure);
const svg = drawingToSvg(drawing, { width, height }, { width, height }, 'sans');
const textsOf = (source: string) =>
  [...source.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, said]) => said ?? '');
const counted = (wanted: (said: string) => boolean) => textsOf(svg).filter(wanted).length;

describe('the drawing', () => {
  it('has each box once, told by its head', () => {
    const heads = whole.nodes.map((node) => node.head);
    expect(new Set(heads)).toEqual(
      new Set([
        'Root cause',
        'Condition',
        'Event',
        'Claim',
        'Finding 1, primary',
        'Finding 2, secondary',
        'Finding 3, unrelated',
        'Finding 4, undecided',
        'Finding 5, looked for, not there',
      ]),
    );
    for (const head of heads) expect(counted((said) => said === head)).toBe(1);
    expect(counted((said) => heads.includes(said))).toBe(figure.nodes.length);
  });

  it('has each class by its letter and the colour of its shape, and none for what is not there', () => {
    for (const damageClass of damageClasses) {
      const { letter, colour } = classStyles[damageClass];
      expect(counted((said) => said === letter)).toBe(1);
      expect(svg.match(new RegExp(`fill="${colour}" stroke="none"`, 'g'))).toHaveLength(1);
    }
  });

  it('has one line and one head of an arrow a link, the line telling how sure', () => {
    const lines = figure.links.flatMap((one) =>
      one.drawing.filter((part) => part.type === 'path' && part.stroke !== null),
    );
    const heads = figure.links.flatMap((one) =>
      one.drawing.filter((part) => part.type === 'path' && part.stroke === null),
    );
    expect([lines.length, heads.length]).toEqual([whole.links.length, whole.links.length]);
    const dashes = new Map(
      figure.links.map((one) => {
        const said = whole.links.find((each) => each.id === one.id)?.certainty;
        const line = one.drawing.find((part) => part.type === 'path' && part.stroke !== null);
        return [said, line?.type === 'path' ? line.dash.join() : ''];
      }),
    );
    expect(dashes.get('established')).toBe('');
    expect(new Set(dashes.values()).size).toBe(3);
    const certain = ['established', 'likely', 'possible'];
    expect(counted((said) => certain.includes(said.split(' ')[0] ?? ''))).toBe(whole.links.length);
    expect(svg.match(/<path d="M[^"]*Z" fill="#2b2b2b" stroke="none"/g)).toHaveLength(whole.links.length);
  });

  it('tells the kinds apart by the shape of the box', () => {
    const shapes = new Map(
      whole.nodes.map((node) => {
        const [outline] = nodeOf(figure, node.id).drawing;
        const lines = outline?.type === 'path' ? outline.d.replace(/[^MLCZ]/g, '') : '';
        const paths = nodeOf(figure, node.id).drawing.filter(
          (part) => part.type === 'path' && part.stroke !== null,
        );
        return [node.kind, `${lines} ${paths.length}`];
      }),
    );
    // An event and a finding have four corners both: round ones and square ones.
    const [, event] = [...shapes].find(([kind]) => kind === 'event') ?? [];
    const [, plain] = [...shapes].find(([kind]) => kind === 'finding') ?? [];
    expect(event).toBe(plain);
    expect(new Set(shapes.values()).size).toBe(4);
    const corner = (kind: string) => {
      const node = whole.nodes.find((one) => one.kind === kind);
      const drawn = nodeOf(figure, node?.id ?? '');
      const [outline] = drawn.drawing;
      const start = outline?.type === 'path' ? Number(/^M([\d.]+)/.exec(outline.d)?.[1]) : NaN;
      return start - drawn.x;
    };
    expect(corner('event') - corner('finding')).toBeGreaterThan(8);
  });

  it('gives links for the same reason the same number', () => {
    const reason = 'the faces touch without a film of oil between them '.repeat(3).trim();
    const twice = ['grit wear', 'grit touch'].map((ends) => link(ends, { reason }));
    const boxes = [root('grit'), written('wear', 'condition'), written('touch')];
    const { notes } = chainToDrawing(chainContent(chainOf(boxes, twice), subjectOf()));
    expect(notes).toEqual([{ number: 1, words: reason }]);
  });

  it('of a long chain has numbers alone on its links, and says below how sure each is', () => {
    const names = Array.from({ length: 9 }, (_, at) => `step-${at}`);
    const boxes = names.map((name) => written(name));
    const reasons = names.slice(1).map((name, at) =>
      link(`step-${at} ${name}`, {
        reason: at === 0 ? '' : `so ${at}`,
        certainty: at % 2 === 0 ? 'possible' : 'established',
      }),
    );
    const long = chainToDrawing(chainContent(chainOf(boxes, reasons), subjectOf()));
    expect(long.notes.map(({ words }) => words)).toEqual([
      'established: so 1',
      'possible: so 2',
      'established: so 3',
      'possible: so 4',
      'established: so 5',
      'possible: so 6',
      'established: so 7',
    ]);
    const said = textsOf(drawingToSvg(figureDrawing(long), long, long, 'sans'));
    // A link without a reason still says how sure it is.
    expect(said.filter((each) => each === 'possible').length).toBe(1);
    for (const { number } of long.notes) expect(said).toContain(`(${number})`);
    expect(said.some((each) => each.startsWith('so '))).toBe(false);
  });

  it('puts a long reason below, under the number that stands on its link', () => {
    expect(figure.notes).toHaveLength(1);
    const [only] = figure.notes;
    expect(only?.words).toBe('a reason that is long '.repeat(12).trim());
    expect(counted((said) => said === 'possible (1)')).toBe(1);
    expect(counted((said) => said === '(1)')).toBe(1);
    expect(textsOf(drawingToSvg(figureDrawing(figure), figure, figure, 'sans'))).not.toContain('(1)');
    expect(height).toBeGreaterThan(figure.height);
  });

  it('holds every word of every box', () => {
    const said = textsOf(svg).join(' ');
    for (const node of whole.nodes) {
      for (const word of node.words.split(' ')) expect(said).toContain(word);
    }
  });
});
