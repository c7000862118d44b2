import { describe, expect, test } from 'vitest';

import { loadPack } from '#analysis/knowledge/load-pack.ts';

import { broken, entry, refusalOf } from './pack-refusals.ts';
import { windlass, windlassFile } from './small-pack.ts';

describe('a pack that is in order', () => {
  test('is handed over as it stands in the file', () => {
    expect(loadPack(JSON.stringify(windlass()), windlassFile)).toEqual(windlass());
  });

  test('may begin with a byte order mark', () => {
    expect(loadPack(`\uFEFF${JSON.stringify(windlass())}`, windlassFile)).toEqual(windlass());
  });

  test('may have causes that meet again without running in a loop', () => {
    const text = broken((pack) => {
      entry(pack.conditions, 1).causes.push({
        from: 'no-grease',
        word: 'sometimes',
        because: 'Directly too.',
      });
    });
    expect(entry(loadPack(text, windlassFile).conditions, 1).causes).toHaveLength(2);
  });
});

describe('a file that is not JSON', () => {
  test('is refused with the line and column where it stops', () => {
    const error = refusalOf('{\n  "schema": 1,\n  "id": windlass\n}');
    expect(error.code).toBe('pack-invalid');
    expect(error.details).toEqual({
      file: windlassFile,
      place: 'line 3, column 9',
      reason: 'this is not readable as JSON',
    });
    expect(error.message).toBe(
      'The machine kind file windlass.json cannot be used: line 3, column 9: this is not readable as JSON.',
    );
  });

  test('is refused where it ends too early', () => {
    expect(refusalOf('{\n  "schema": 1').details.place).toBe('line 2, column 14');
    expect(refusalOf('').details).toMatchObject({ place: 'line 1, column 1' });
  });

  test('is refused as a whole when it is something else', () => {
    expect(refusalOf('[]').details).toMatchObject({
      place: 'the whole file',
      reason: 'an object is expected here, not a list',
    });
  });
});
