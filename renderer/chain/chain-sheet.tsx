/** The figure on its sheet, white in both themes as it is printed; boxes can be chosen, walked and linked. */
import { useEffect, useRef, type KeyboardEvent } from 'react';
import type { ChainFigure, DrawnLink, DrawnNode } from '#analysis/chain/chain-to-drawing.ts';
import { notesDrawing } from '#analysis/chain/chain-to-drawing.ts';
import { nextBox, type WalkDirection } from '#analysis/chain/walk-boxes.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import { classNames } from '../ui/class-names.ts';
import { DrawnPart } from '../ui/drawn-part.tsx';
import type { SheetView } from './use-sheet-view.ts';
import { useSheetPointer } from './use-sheet-pointer.ts';

export type Chosen =
  { readonly what: 'node'; readonly id: ChainNodeId } | { readonly what: 'link'; readonly id: ChainLinkId };

export type ChainSheetProps = {
  name: string;
  figure: ChainFigure;
  sheetView: SheetView;
  chosen: Chosen | null;
  /** The cause of a link begun by key. */
  linkingFrom: ChainNodeId | null;
  readOnly: boolean;
  nameOf: (id: ChainNodeId) => string;
  /** Counts up whenever the keyboard is to go to a box that was chosen elsewhere. */
  goTo: { readonly id: ChainNodeId; readonly turn: number } | null;
  onWalked: (id: ChainNodeId) => void;
  onPressed: (pressed: { node: ChainNodeId | null; link: ChainLinkId | null }) => void;
  onEnter: (id: ChainNodeId) => void;
  onEscape: () => void;
  onLinked: (cause: ChainNodeId, effect: ChainNodeId) => void;
};

const walks: Readonly<Record<string, WalkDirection>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};
/** CSS pixels. */
const panStep = 60;
const ringGap = 3.5;
const paperMargin = 14;

export function ChainSheet(props: ChainSheetProps) {
  const { figure, sheetView, chosen, linkingFrom, goTo } = props;
  const { view, measure } = sheetView;
  const well = useRef<HTMLDivElement>(null);
  const groups = useRef(new Map<ChainNodeId, SVGGElement>());
  const pointer = useSheetPointer({
    well,
    sheetView,
    nodes: figure.nodes,
    canLink: !props.readOnly,
    onPressed: props.onPressed,
    onLinked: props.onLinked,
  });
  const notes = notesDrawing(figure);
  const chosenNode = chosen?.what === 'node' ? chosen.id : null;
  const firstStop = figure.nodes.some((node) => node.id === chosenNode) ? chosenNode : figure.nodes[0]?.id;

  const measured = view !== null;

  useEffect(() => {
    if (goTo !== null && measured) groups.current.get(goTo.id)?.focus({ preventScroll: true });
  }, [goTo, measured]);

  const onKeyDown = (event: KeyboardEvent, node: DrawnNode) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const direction = walks[event.key];
    if (direction !== undefined && event.shiftKey) {
      const step = { left: [1, 0], right: [-1, 0], up: [0, 1], down: [0, -1] }[direction];
      sheetView.panBy((step[0] ?? 0) * panStep, (step[1] ?? 0) * panStep);
    } else if (direction !== undefined) {
      const next = nextBox(figure.nodes, node.id, direction);
      if (next !== null) groups.current.get(next)?.focus({ preventScroll: true });
    } else if (event.key === 'Enter' || event.key === ' ') props.onEnter(node.id);
    else if (event.key === 'Escape') props.onEscape();
    else return;
    event.preventDefault();
  };

  return (
    <div
      className="chain-well"
      ref={(element) => {
        well.current = element;
        const ended = measure(element);
        return () => {
          ended?.();
          well.current = null;
        };
      }}
      {...pointer.handlers}
    >
      <svg className="chain-sheet" data-theme="light" role="group" aria-label={props.name}>
        {view === null ? null : (
          <g transform={`translate(${view.origin.x} ${view.origin.y}) scale(${view.scale})`}>
            <rect
              className="chain-paper"
              x={-paperMargin}
              y={-paperMargin}
              width={notes.width + 2 * paperMargin}
              height={notes.height + 2 * paperMargin}
            />
            {figure.links.map((link) => (
              <LinkPart
                key={link.id}
                link={link}
                chosen={chosen?.what === 'link' && chosen.id === link.id}
                onBegin={(event) => pointer.begin(event, null, link.id)}
              />
            ))}
            {pointer.dragged === null ? null : <DragLine figure={figure} dragged={pointer.dragged} />}
            {figure.nodes.map((node) => (
              <g key={node.id}>
                <g aria-hidden="true">
                  <DrawnPart drawing={node.drawing} />
                </g>
                <g
                  ref={(element) => {
                    if (element === null) groups.current.delete(node.id);
                    else groups.current.set(node.id, element);
                  }}
                  role="button"
                  className={classNames(
                    'chain-node',
                    node.id === chosenNode && 'chain-node-chosen',
                    (node.id === linkingFrom || node.id === pointer.dragged?.from) && 'chain-node-cause',
                    node.id === pointer.dragged?.over && 'chain-node-effect',
                  )}
                  tabIndex={node.id === firstStop ? 0 : -1}
                  aria-label={props.nameOf(node.id)}
                  aria-current={node.id === chosenNode ? 'true' : undefined}
                  onFocus={() => {
                    sheetView.show(node);
                    props.onWalked(node.id);
                  }}
                  onPointerDown={(event) => {
                    event.currentTarget.focus({ preventScroll: true });
                    pointer.begin(event, node.id, null);
                  }}
                  onKeyDown={(event) => onKeyDown(event, node)}
                >
                  <rect
                    className="chain-ring"
                    x={node.x - ringGap}
                    y={node.y - ringGap}
                    width={node.width + 2 * ringGap}
                    height={node.height + 2 * ringGap}
                    rx={3}
                  />
                </g>
              </g>
            ))}
            <DrawnPart drawing={notes.drawing} />
          </g>
        )}
      </svg>
    </div>
  );
}

function LinkPart(props: { link: DrawnLink; chosen: boolean; onBegin: (event: React.PointerEvent) => void }) {
  const { link, chosen } = props;
  return (
    <g
      className={classNames('chain-link', chosen && 'chain-link-chosen')}
      data-link={link.id}
      aria-hidden="true"
      onPointerDown={props.onBegin}
    >
      <path className="chain-link-reach" d={link.line} />
      <rect
        className="chain-link-words"
        x={link.label.x}
        y={link.label.y}
        width={link.label.width}
        height={link.label.height}
      />
      <DrawnPart drawing={link.drawing} />
    </g>
  );
}

function DragLine({
  figure,
  dragged,
}: {
  figure: ChainFigure;
  dragged: { readonly from: ChainNodeId; readonly to: { readonly x: number; readonly y: number } };
}) {
  const from = figure.nodes.find((node) => node.id === dragged.from);
  if (from === undefined) return null;
  return (
    <path
      className="chain-drag"
      d={`M${from.x + from.width} ${from.y + from.height / 2}L${dragged.to.x} ${dragged.to.y}`}
    />
  );
}
