/** What a mouse or a finger does on the sheet: choose, move the sheet, drag from a cause to its effect. */
import { useEffect, useEffectEvent, useRef, useState, type PointerEvent, type RefObject } from 'react';
import type { Spot } from '#analysis/chain/chain-layout.ts';
import { boxAt } from '#analysis/chain/walk-boxes.ts';
import type { DrawnNode } from '#analysis/chain/chain-to-drawing.ts';
import { imagePoint, screenPoint, screenToImage } from '#analysis/marks/planes.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import type { SheetView } from './use-sheet-view.ts';

/** A link on its way from a box to the pointer. */
export type DraggedLink = {
  readonly from: ChainNodeId;
  readonly to: Spot;
  readonly over: ChainNodeId | null;
};

type Press = {
  readonly pointer: number;
  readonly on: { readonly x: number; readonly y: number };
  readonly node: ChainNodeId | null;
  readonly link: ChainLinkId | null;
  readonly moved: boolean;
  readonly last: { readonly x: number; readonly y: number };
};

/** CSS pixels that a press may tremble. */
const still = 4;
const wheelStep = 1.0015;

export function useSheetPointer(props: {
  well: RefObject<HTMLElement | null>;
  sheetView: SheetView;
  nodes: readonly DrawnNode[];
  canLink: boolean;
  onPressed: (pressed: { node: ChainNodeId | null; link: ChainLinkId | null }) => void;
  onLinked: (cause: ChainNodeId, effect: ChainNodeId) => void;
}) {
  const { well, sheetView, nodes, canLink } = props;
  const { view } = sheetView;
  /** Not drawn, and never behind: several moves can come between two drawings. */
  const press = useRef<Press | null>(null);
  const [dragged, setDragged] = useState<DraggedLink | null>(null);

  const placeOf = (event: { clientX: number; clientY: number }) => {
    const edge = well.current?.getBoundingClientRect();
    return { x: event.clientX - (edge?.left ?? 0), y: event.clientY - (edge?.top ?? 0) };
  };
  const onFigure = (place: { x: number; y: number }): Spot =>
    view === null ? imagePoint(0, 0) : screenToImage(view, screenPoint(place.x, place.y));

  const begin = (event: PointerEvent, node: ChainNodeId | null, link: ChainLinkId | null) => {
    if (event.button !== 0 && event.button !== 1) return;
    event.stopPropagation();
    well.current?.setPointerCapture(event.pointerId);
    const on = placeOf(event);
    const pans = event.button === 1;
    press.current = {
      pointer: event.pointerId,
      on,
      last: on,
      node: pans ? null : node,
      link: pans ? null : link,
      moved: pans,
    };
  };

  /** The link on its way with this press; null where none is dragged. */
  const draggedTo = ({ node, moved, last }: Press): DraggedLink | null => {
    if (node === null || !moved || !canLink) return null;
    const to = onFigure(last);
    const over = boxAt(nodes, to);
    return { from: node, to, over: over === node ? null : over };
  };

  /** The press as it is with the pointer where the event has it; null where another pointer was pressed, or none. */
  const pressAt = (event: PointerEvent): Press | null => {
    const before = press.current;
    if (before?.pointer !== event.pointerId) return null;
    const last = placeOf(event);
    const moved = before.moved || Math.hypot(last.x - before.on.x, last.y - before.on.y) > still;
    return { ...before, moved, last };
  };

  const onPointerMove = (event: PointerEvent) => {
    const before = press.current;
    const now = pressAt(event);
    if (before === null || now === null) return;
    press.current = now;
    const link = draggedTo(now);
    if (link !== null) setDragged(link);
    else if (now.moved) sheetView.panBy(now.last.x - before.last.x, now.last.y - before.last.y);
  };

  const leave = () => {
    press.current = null;
    setDragged(null);
  };

  const onPointerUp = (event: PointerEvent) => {
    const now = pressAt(event);
    if (now === null) return;
    leave();
    // What counts is where it is let go: the last move may not have been drawn yet.
    const made = draggedTo(now);
    if (!now.moved) props.onPressed({ node: now.node, link: now.link });
    else if (made !== null && made.over !== null) props.onLinked(made.from, made.over);
  };

  const wheeled = useEffectEvent((event: WheelEvent) => {
    event.preventDefault();
    const { x, y } = placeOf(event);
    sheetView.zoom(wheelStep ** -event.deltaY, screenPoint(x, y));
  });
  const cancelled = useEffectEvent((event: KeyboardEvent) => {
    if (event.key !== 'Escape' || press.current === null) return;
    event.preventDefault();
    leave();
  });
  useEffect(() => {
    const element = well.current;
    const turn = (event: WheelEvent) => wheeled(event);
    const cancel = (event: KeyboardEvent) => cancelled(event);
    // The browser's own listener would be passive: the page would zoom or scroll along.
    element?.addEventListener('wheel', turn, { passive: false });
    window.addEventListener('keydown', cancel, { capture: true });
    return () => {
      element?.removeEventListener('wheel', turn);
      window.removeEventListener('keydown', cancel, { capture: true });
    };
  }, [well]);

  return {
    dragged,
    begin,
    handlers: {
      onPointerDown: (event: PointerEvent) => begin(event, null, null),
      onPointerMove,
      onPointerUp,
      onPointerCancel: leave,
    },
  };
}
