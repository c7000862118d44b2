/** Whatever is done, in whatever order: the journal tells each write and its chain holds, and what is searched is what is there. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { onePropertyLibrary } from '../support/property-library.ts';
import { libraryContent } from '../support/library-content.ts';
import { carryOut, works, type Memory, type Step } from '../support/world-work.ts';
import { turbochargerPack } from '../support/world.ts';

const pack = turbochargerPack();
const size = { cases: 2, findings: [1, 3], photos: [0, 2], marks: [0, 3] } as const;

const step: fc.Arbitrary<Step> = fc.record({
  work: fc.constantFrom(...works),
  seed: fc.nat({ max: 0xffffffff }),
});

/** Long enough for a case to be withdrawn and then worked on again. */
const steps = fc.array(step, { minLength: 12, maxLength: 30, size: 'max' });

describe('after random work', () => {
  test('the journal has one line for each write, of its case, and none for what was refused', async () => {
    const kinds = new Set<string>();
    await fc.assert(
      fc.asyncProperty(steps, async (work) => {
        await using library = await onePropertyLibrary(21, size);
        const { engine } = library;
        const lines = () => engine.ask('journal.list', { caseId: null, most: 1_000 });
        let before = await lines();
        const memory: Memory = { removed: [] };
        for (const one of work) {
          const contentBefore = libraryContent(engine.db);
          const done = await carryOut(engine, pack, memory, one);
          const after = await lines();
          if (done === 'nothing to do' || 'refused' in done) {
            kinds.add(done === 'nothing to do' ? done : done.refused);
            expect(libraryContent(engine.db)).toEqual(contentBefore);
          } else {
            kinds.add(one.work);
            expect(after.length).toBe(before.length + 1);
            expect(after[0]?.caseId).toBe(done.wroteTo);
          }
          before = after;
        }
        expect(await engine.ask('journal.check', {})).toMatchObject({
          brokenAt: null,
          entries: before.length,
        });
      }),
      { numRuns: 8, seed: 20260304 },
    );
    // A property that never got this far would have shown nothing.
    expect([...kinds]).toEqual(
      expect.arrayContaining(['stale-revision', 'case-closed', 'bring finding back']),
    );
  });

  test('the full text index is whole, and holds what the cases, photos and findings say now', async () => {
    await fc.assert(
      fc.asyncProperty(steps, async (work) => {
        await using library = await onePropertyLibrary(22, size);
        const { db } = library.engine;
        const memory: Memory = { removed: [] };
        for (const one of work) await carryOut(library.engine, pack, memory, one);
        // 1 as rank: compared with the content too. https://sqlite.org/fts5.html#the_integrity_check_command
        db.prepare("INSERT INTO search_text (search_text, rank) VALUES ('integrity-check', 1)").run();
        const shouldSay = db
          .prepare(
            `SELECT page, subject_row, title, body FROM (
               SELECT * FROM case_words UNION ALL SELECT * FROM photo_words UNION ALL SELECT * FROM finding_words
               UNION ALL SELECT * FROM party_words UNION ALL SELECT * FROM custody_words)
             WHERE title <> '' OR body <> '' ORDER BY page, subject_row`,
          )
          .all();
        const says = db
          .prepare('SELECT page, subject_row, title, body FROM search_document ORDER BY page, subject_row')
          .all();
        expect(says).toEqual(shouldSay);
        expect(db.pragma('foreign_key_check')).toEqual([]);
        expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
      }),
      { numRuns: 8, seed: 20260305 },
    );
  });

  test('an index that differs from what is written would be noticed', async () => {
    await using library = await onePropertyLibrary(23, size);
    const { db } = library.engine;
    db.exec('DROP TRIGGER search_page_before_a_document_changed');
    db.exec('DROP TRIGGER search_page_with_a_document_changed');
    db.exec("UPDATE search_document SET body = body || ' something else'");
    expect(() =>
      db.prepare("INSERT INTO search_text (search_text, rank) VALUES ('integrity-check', 1)").run(),
    ).toThrow('malformed');
  });
});
