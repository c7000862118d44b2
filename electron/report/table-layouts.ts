/** Rules and padding of the tables, by the names under which pdfmake knows them. */
import type { CustomTableLayout } from 'pdfmake';

import { ink } from './typesetting.ts';

export const tableLayouts: Record<string, CustomTableLayout> = {
  legend: noLines(0, 1),
  block: noLines(0, 2),
  findings: ruled(),
};

/** A rule below each row; 4 points on either side of a cell, none before the first. */
function ruled(): CustomTableLayout {
  return {
    hLineWidth: (row) => (row === 0 ? 0 : 0.5),
    vLineWidth: () => 0,
    hLineColor: () => ink.tableRule,
    paddingLeft: (column) => (column === 0 ? 0 : 4),
    paddingRight: () => 4,
    paddingTop: () => 3.5,
    paddingBottom: () => 2.5,
  };
}

function noLines(paddingTop: number, paddingBottom: number): CustomTableLayout {
  return {
    hLineWidth: () => 0,
    vLineWidth: () => 0,
    paddingLeft: () => 0,
    paddingRight: () => 0,
    paddingTop: () => paddingTop,
    paddingBottom: () => paddingBottom,
  };
}
