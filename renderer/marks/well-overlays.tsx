/** What the well paints over the marks: handles, the keyboard's cross, the box that chooses. */
import { Circle, Line, Rect } from 'react-konva';
import type { Hold } from '#analysis/marks/gesture/gesture.ts';
import { handlesOf, type Ground } from '#analysis/marks/mark-handles.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';

/** On any picture: a light line with a dark edge. */
const ink = '#ffffff';
const edge = '#101112';
const inkWidth = 1.75;
const edgeWidth = 4;

/** Many corners close together are to be told apart. */
const roomyCount = 24;

export function Handles({ geometry, hold, ground }: { geometry: MarkGeometry; hold: Hold; ground: Ground }) {
  const handles = handlesOf(geometry, ground);
  return handles.map(({ name, at }, index) => (
    <HandleRing
      key={name}
      at={at}
      unit={ground.unit}
      held={hold === name}
      radius={handles.length > roomyCount ? 3.5 : index === 0 && geometry.kind === 'arrow' ? 7 : 5}
    />
  ));
}

/** Hollow, so that what it points at stays in sight; radius in CSS pixels. */
function HandleRing(props: { at: ImagePoint; unit: number; held: boolean; radius: number }) {
  const { at, unit, held, radius } = props;
  const common = { x: at.x, y: at.y, radius: radius * unit, listening: false, perfectDrawEnabled: false };
  return (
    <>
      <Circle {...common} stroke={edge} strokeWidth={(held ? 6 : edgeWidth) * unit} />
      <Circle {...common} stroke={ink} strokeWidth={(held ? 3.5 : inkWidth) * unit} />
    </>
  );
}

export function Cross({ at, unit }: { at: ImagePoint; unit: number }) {
  const arms = [
    [at.x - 16 * unit, at.y, at.x - 3 * unit, at.y],
    [at.x + 3 * unit, at.y, at.x + 16 * unit, at.y],
    [at.x, at.y - 16 * unit, at.x, at.y - 3 * unit],
    [at.x, at.y + 3 * unit, at.x, at.y + 16 * unit],
  ];
  return [
    { stroke: edge, width: edgeWidth },
    { stroke: ink, width: inkWidth },
  ].flatMap(({ stroke, width }) =>
    arms.map((points, index) => (
      <Line
        key={`${stroke}-${index}`}
        points={points}
        stroke={stroke}
        strokeWidth={width * unit}
        listening={false}
        perfectDrawEnabled={false}
      />
    )),
  );
}

export function ChoosingBox({ from, to, unit }: { from: ImagePoint; to: ImagePoint; unit: number }) {
  const common = {
    x: Math.min(from.x, to.x),
    y: Math.min(from.y, to.y),
    width: Math.abs(to.x - from.x),
    height: Math.abs(to.y - from.y),
    listening: false,
    perfectDrawEnabled: false,
  };
  return (
    <>
      <Rect {...common} stroke={edge} strokeWidth={3 * unit} />
      <Rect {...common} stroke={ink} strokeWidth={1.25 * unit} dash={[5 * unit, 3 * unit]} />
    </>
  );
}
