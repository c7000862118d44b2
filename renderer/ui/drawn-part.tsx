/** The primitives of a drawing as SVG: the same that the report prints. */
import { memo } from 'react';
import type { Drawing, DrawingPrimitive } from '#shared-types/drawing.ts';

export const DrawnPart = memo(function DrawnPart({ drawing }: { drawing: Drawing }) {
  return drawing.map((primitive, at) => <Primitive key={at} of={primitive} />);
});

function Primitive({ of }: { of: DrawingPrimitive }) {
  if (of.type === 'text') {
    return (
      <text x={of.x} y={of.y} fontSize={of.size} fontWeight={of.weight} fill={of.fill}>
        {of.text}
      </text>
    );
  }
  return (
    <path
      d={of.d}
      fill={of.fill ?? 'none'}
      stroke={of.stroke ?? 'none'}
      strokeWidth={of.strokeWidth}
      strokeDasharray={of.dash.length === 0 ? undefined : of.dash.join(' ')}
      strokeLinecap="round"
      strokeLinejoin="round"
      opacity={of.opacity}
    />
  );
}
