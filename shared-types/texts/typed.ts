/** What is said of a typed number, time or duration that cannot be read. */
export const typedTexts = {
  number: {
    notANumber: 'This is not a number. Write it in figures.',
    exponent: 'Write the number out in full, without an exponent.',
    unitNotHere: (words: string) => `Only the number belongs here, without “${words}”.`,
    grouping: 'The figures are not parted in threes. Write the number without signs between them.',
    tooLong: 'This number has too many figures to be kept exactly.',
  },
  time: {
    notATime: 'This is not a date. Write it like 2026-03-04, March 2026 or 2026.',
    noYear: 'The year is missing. Write it with four figures.',
    shortYear: 'Write the year with four figures.',
    yearOutOfReach: (first: number, last: number) =>
      `Write a year between ${String(first)} and ${String(last)}.`,
    noSuchMonth: (month: number) => `There is no month ${String(month)}.`,
    noSuchDay: (day: number, month: string, year: number) =>
      `There is no ${String(day)} ${month} ${String(year)}.`,
    noSuchClock: (clock: string) => `There is no ${clock} o’clock.`,
    zoneNotHere: 'Leave the zone out: the time stands here as it was told.',
    months: [
      'January',
      'February',
      'March',
      'April',
      'May',
      'June',
      'July',
      'August',
      'September',
      'October',
      'November',
      'December',
    ],
  },
  duration: {
    unitMissing: 'Say of what: days, weeks, months or years.',
    notADuration: 'This is not a length of time. Write it like 4 months or 10 days.',
  },
  negative: 'This cannot be less than nothing.',
  above: (most: string) => `This is more than ${most}, the most that can be entered here.`,
} as const;
