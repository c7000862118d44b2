/** The photos station with a thousand photos, in a browser: what the wheel does to the page's tasks and to its pictures. */
import { setTimeout as pause } from 'node:timers/promises';

import type { Page } from 'playwright';

import { photosTexts } from '#shared-types/texts/photos.ts';

import { openProgramHouse } from '../browser/program-house.ts';
import { furnishCaseOfPhotos } from '../support/pictures/case-of-photos.ts';
import { figure, type Figure } from './figures.ts';

const photoCount = 1_000;
const size = { width: 1920, height: 1080 };

/** Milliseconds. */
type Watched = {
  readonly longestTask: number;
  readonly tasksOver100: number;
  /** The longest that a cell in sight went without its picture, or that a place in sight had no cell. */
  readonly longestBlank: number;
  readonly frames: number;
};

export async function measurePhotoGrid(): Promise<Figure[]> {
  let caseId = '';
  const house = await openProgramHouse(null, async (folder) => {
    caseId = await furnishCaseOfPhotos(folder, photoCount);
  });
  try {
    const { page } = await house.open({ route: `/case/${caseId}/photos`, size });
    const grid = page.getByRole('listbox', { name: photosTexts.grid });
    await grid.getByRole('option').first().waitFor();
    await grid.hover();
    const steadily = await whileScrolling(page, { step: 240, every: 40 });
    const fast = await whileScrolling(page, { step: -1_200, every: 16 });
    return [
      ...figuresOf('the wheel steadily through 1,000 photos, unseen before', steadily),
      ...figuresOf('the wheel as fast as it turns, back again', fast),
    ];
  } finally {
    await house.close();
  }
}

function figuresOf(words: string, { longestTask, tasksOver100, longestBlank, frames }: Watched): Figure[] {
  return [
    figure(`Longest task of the page over 50 ms: ${words}`, longestTask, 'ms'),
    figure(`Tasks of the page over 100 ms: ${words}`, tasksOver100, 'tasks'),
    figure(`Frames that were looked at: ${words}`, frames, 'frames'),
    figure(`Longest that a cell in sight was blank: ${words}`, longestBlank, 'ms'),
  ];
}

/** @param wheel pixels a notch, down or up, and milliseconds between two; from one end of the grid to the other */
async function whileScrolling(page: Page, wheel: { step: number; every: number }): Promise<Watched> {
  await page.evaluate(beginWatching);
  const isAtEnd = (down: boolean) => {
    const box = document.querySelector('.photo-grid-box');
    if (box === null) throw new Error('the grid is gone');
    return down ? box.scrollTop + box.clientHeight >= box.scrollHeight - 1 : box.scrollTop <= 0;
  };
  while (!(await page.evaluate(isAtEnd, wheel.step > 0))) {
    await page.mouse.wheel(0, wheel.step);
    await pause(wheel.every);
  }
  // What is blank at the end is watched until it is not, or for a second.
  await pause(1_000);
  return page.evaluate(() => (window as unknown as { endWatching: () => Watched }).endWatching());
}

/** Runs in the page. */
function beginWatching(): void {
  const tasks: number[] = [];
  const observer = new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) tasks.push(entry.duration);
  });
  observer.observe({ entryTypes: ['longtask'] });
  const blankSince = new Map<string, number>();
  let longestBlank = 0;
  let frames = 0;
  let frame = 0;
  const look = (now: number) => {
    frame = requestAnimationFrame(look);
    frames += 1;
    const blank = new Set<string>();
    const box = document.querySelector('.photo-grid-box')?.getBoundingClientRect();
    if (box === undefined) return;
    const cells = [...document.querySelectorAll('.photo-grid [role=option]')].flatMap((cell) => {
      const rect = cell.getBoundingClientRect();
      return rect.bottom > box.top && rect.top < box.bottom ? [{ cell, rect }] : [];
    });
    for (const { cell } of cells) {
      const picture = cell.querySelector('img');
      const loaded = picture !== null && picture.complete && picture.naturalWidth > 0;
      if (!loaded) blank.add(cell.id);
    }
    // 12 pixels lie between two rows.
    if (Math.min(...cells.map(({ rect }) => rect.top)) > box.top + 12) blank.add('above');
    if (Math.max(...cells.map(({ rect }) => rect.bottom)) < box.bottom - 12) blank.add('below');
    for (const [name, since] of blankSince) {
      longestBlank = Math.max(longestBlank, now - since);
      if (!blank.has(name)) blankSince.delete(name);
    }
    for (const name of blank) if (!blankSince.has(name)) blankSince.set(name, now);
  };
  frame = requestAnimationFrame(look);
  Object.assign(window, {
    endWatching: () => {
      cancelAnimationFrame(frame);
      for (const entry of observer.takeRecords()) tasks.push(entry.duration);
      observer.disconnect();
      return {
        longestTask: Math.max(0, ...tasks),
        tasksOver100: tasks.filter((duration) => duration > 100).length,
        longestBlank,
        frames,
      };
    },
  });
}
