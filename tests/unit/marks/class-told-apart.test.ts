/**
 * Whether the classes are told apart by eyes that see colours otherwise, and in grey print.
 * Colour blindness is simulated in linear sRGB by the matrices of G. M. Machado, M. M. Oliveira and L. A. F. Fernandes,
 * "A physiologically-based model for simulation of color vision deficiency", IEEE TVCG 15 (2009), at severity 1.0 (the
 * figures from memory; each row sums to 1, as it must for white to stay white). Contrast: WCAG 2.2, contrast ratio.
 */
import { describe, expect, it } from 'vitest';
import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import { damageClasses, type DamageClass } from '#shared-types/finding.ts';
import type { MarkGeometry, MarkKind } from '#shared-types/mark.ts';

type Rgb = readonly [number, number, number];
type Sight = readonly [Rgb, Rgb, Rgb];

const full: Sight = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
const protanopia: Sight = [
  [0.152286, 1.052583, -0.204868],
  [0.114503, 0.786281, 0.099216],
  [-0.003882, -0.048116, 1.051998],
];
const deuteranopia: Sight = [
  [0.367322, 0.860646, -0.227968],
  [0.280085, 0.672501, 0.047413],
  [-0.01182, 0.04294, 0.968881],
];
const tritanopia: Sight = [
  [1.255528, -0.076749, -0.178779],
  [-0.078411, 0.930809, 0.147602],
  [0.004733, 0.691367, 0.3039],
];
/** Relative luminance of linear sRGB, WCAG 2.2. */
const luminance: Rgb = [0.2126, 0.7152, 0.0722];
const grey: Sight = [luminance, luminance, luminance];

const sights = { full, protanopia, deuteranopia, tritanopia, grey };

/** sRGB to linear: IEC 61966-2-1. */
function linear(hex: string): Rgb {
  const channel = (at: number) => {
    const value = parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

const dot = (one: Rgb, other: Rgb) => one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

function seenLuminance(hex: string, sight: Sight): number {
  const seen = sight.map((row) => Math.min(1, Math.max(0, dot(row, linear(hex)))));
  return dot([seen[0]!, seen[1]!, seen[2]!], luminance);
}

function contrast(one: string, other: string, sight: Sight): number {
  const [a, b] = [seenLuminance(one, sight), seenLuminance(other, sight)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Colours of parts as photos show them: common practice, no source. */
const darkMetal = { soot: '#1d1e20', 'burnt iron': '#3b3431', 'blue heat tint': '#3c4763' };
const lightMetal = { 'turned steel': '#d4d6d8', aluminium: '#e4e4e2', 'ruler in the sun': '#f2f1ec' };

const at = imagePoint;
/** A scale shows no damage and has no class. */
const marks: Readonly<Record<Exclude<MarkKind, 'scale' | 'rectangle'>, MarkGeometry>> = {
  arrow: { kind: 'arrow', v: 1, tail: at(100, 100), tip: at(500, 300) },
  ring: { kind: 'ring', v: 1, centre: at(500, 500), radiusX: 200, radiusY: 90, rotation: 0.4 },
  outline: { kind: 'outline', v: 1, corners: [at(100, 100), at(500, 120), at(320, 400)] },
  line: { kind: 'line', v: 1, from: at(100, 100), to: at(500, 300) },
  text: { kind: 'text', v: 1, at: at(300, 300), words: 'scored here' },
  dimension: { kind: 'dimension', v: 1, from: at(100, 100), to: at(500, 300) },
};

/** What a class looks like when no colour is left: letter, form of the box, and dashes. */
function withoutColour(geometry: MarkGeometry, damageClass: DamageClass) {
  const { letter } = classStyles[damageClass];
  const drawing = markToDrawing(geometry, { class: damageClass, label: `${letter} 7.1`, unit: 1 });
  const label = drawing.findLast((each) => each.type === 'text');
  const box = drawing.findLast((each) => each.type === 'path');
  const dashed = drawing.filter(
    (each) => each.type === 'path' && each.stroke !== null && each.dash.length > 0,
  );
  return {
    letter: label?.type === 'text' ? label.text.slice(0, 1) : '',
    form: box?.type === 'path' ? box.d.replace(/[^MLCZ]/g, '') : '',
    dash: dashed.map((each) => (each.type === 'path' ? each.dash.map((part) => part.toFixed(3)) : [])),
  };
}

describe.each(Object.keys(marks) as (keyof typeof marks)[])('the classes of a %s', (kind) => {
  it('differ in letter and in dash, whatever becomes of their colours', () => {
    const looks = damageClasses.map((each) => withoutColour(marks[kind], each));
    expect(new Set(looks.map(({ letter }) => letter)).size).toBe(damageClasses.length);
    expect(new Set(looks.map(({ dash }) => JSON.stringify(dash))).size).toBe(damageClasses.length);
  });

  it('keep primary, secondary and undecided apart by the form of the box too', () => {
    const form = (each: DamageClass) => {
      const geometry = marks[kind];
      const { shape } = classStyles[each];
      return `${shape} ${withoutColour(geometry, each).form}`;
    };
    expect(new Set((['primary', 'secondary', 'undecided'] as const).map(form)).size).toBe(3);
    expect(withoutColour(marks[kind], 'undecided').form).not.toBe(withoutColour(marks[kind], 'primary').form);
  });
});

describe.each(Object.entries(sights))('with sight as of %s', (_name, sight) => {
  it('white stays white', () => {
    expect(seenLuminance(haloColour, sight)).toBeCloseTo(1, 4);
  });

  // WCAG 2.2, 1.4.11: 3 to 1 for graphics, 1.4.3: 4.5 to 1 for the label's text of this size.
  it.each(damageClasses)(
    'the line of %s stands off its halo, and the label’s letters off their box',
    (each) => {
      expect(contrast(classStyles[each].colour, haloColour, sight)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it.each(Object.entries(darkMetal))('the halo stands off %s', (_metal, colour) => {
    expect(contrast(haloColour, colour, sight)).toBeGreaterThanOrEqual(3);
  });

  it.each(Object.entries(lightMetal))('every line stands off %s', (_metal, colour) => {
    for (const each of damageClasses) {
      expect(contrast(classStyles[each].colour, colour, sight)).toBeGreaterThanOrEqual(3);
    }
  });

  it('line or halo stands off metal of any grey by 2.1 at least: between the two a mark is a light and a dark line', () => {
    for (let value = 0; value <= 255; value++) {
      const metal = `#${value.toString(16).padStart(2, '0').repeat(3)}`;
      for (const each of damageClasses) {
        const best = Math.max(
          contrast(haloColour, metal, sight),
          contrast(classStyles[each].colour, metal, sight),
        );
        expect(best, `${each} on ${metal}`).toBeGreaterThanOrEqual(2.1);
      }
    }
  });
});

describe('colour alone', () => {
  it('would not do: in grey and to some eyes two classes are nearly the same', () => {
    const pairs = damageClasses.flatMap((one, index) =>
      damageClasses.slice(index + 1).map((other) => [one, other] as const),
    );
    const least = (sight: Sight) =>
      Math.min(...pairs.map(([a, b]) => contrast(classStyles[a].colour, classStyles[b].colour, sight)));
    expect(least(grey)).toBeLessThan(1.1);
    expect(least(deuteranopia)).toBeLessThan(1.1);
  });
});
