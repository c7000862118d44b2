import { describe, expect, it } from 'vitest';

import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import type { Drawing } from '#shared-types/drawing.ts';

const path = { type: 'path', d: 'M0 0L10 5', fill: null, stroke: '#b84700', opacity: 1 } as const;

describe('drawingToSvg', () => {
  it('keeps the drawing’s own coordinates and scales both axes to the printed size', () => {
    const svg = drawingToSvg([], { width: 4000, height: 3000 }, { width: 484.25, height: 363.2 }, 'sans');
    expect(svg).toContain('width="484.25" height="363.2" viewBox="0 0 4000 3000" preserveAspectRatio="none"');
  });

  it('writes paths in order, dashed or not', () => {
    const drawing: Drawing = [
      { ...path, strokeWidth: 8, dash: [] },
      { ...path, strokeWidth: 4.5, dash: [11, 7], opacity: 0.5 },
    ];
    const svg = drawingToSvg(drawing, { width: 10, height: 10 }, { width: 10, height: 10 }, 'sans');
    expect(svg.indexOf('stroke-width="8"')).toBeLessThan(svg.indexOf('stroke-width="4.5"'));
    expect(svg.match(/stroke-dasharray="11 7"/g)).toHaveLength(1);
    expect(svg).toContain('opacity="0.5"');
  });

  it('escapes words and attributes, and drops what XML forbids', () => {
    const hostile = '</text><image href="file:///x"/>&"\u0000';
    const svg = drawingToSvg(
      [{ type: 'text', text: hostile, x: 0, y: 0, size: 9, weight: 600, fill: '"><image/>' }],
      { width: 10, height: 10 },
      { width: 10, height: 10 },
      'sans',
    );
    expect(svg).not.toContain('<image');
    expect(svg).toContain('&lt;/text&gt;&lt;image href=&quot;file:///x&quot;/&gt;&amp;&quot;\ufffd</text>');
  });

  it('refuses numbers that are not finite', () => {
    const drawing: Drawing = [{ ...path, strokeWidth: Number.NaN, dash: [] }];
    expect(() => drawingToSvg(drawing, { width: 1, height: 1 }, { width: 1, height: 1 }, 'sans')).toThrow(
      RangeError,
    );
  });
});
