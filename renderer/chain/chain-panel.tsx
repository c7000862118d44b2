/** Beside the figure: what is chosen, what is to be settled, and every box and link in words, for ears and keys. */
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ChainFlag } from '#analysis/chain/chain-flags.ts';
import type { ChainState, HeldLink, HeldNode } from '#analysis/chain/chain-state.ts';
import { chainNodeKinds } from '#shared-types/chain.ts';
import type { CaseId, ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import { chainFigureTexts, chainTexts } from '#shared-types/texts/chain.ts';
import { findingAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { PanelHead } from '../ui/side-panel.tsx';
import type { NodeWords } from '#analysis/chain/node-words.ts';
import type { Chosen } from './chain-sheet.tsx';

const texts = chainTexts.panel;
const flagsAtOnce = 8;

export type ChainPanelProps = {
  caseId: CaseId;
  state: ChainState;
  flags: readonly ChainFlag[];
  chosen: Chosen | null;
  readOnly: boolean;
  wordsOf: (node: HeldNode) => NodeWords;
  nameOf: (id: ChainNodeId) => string;
  onGoTo: (id: ChainNodeId) => void;
  onChooseLink: (id: ChainLinkId) => void;
  onBeginLink: () => void;
  onChange: () => void;
  onRemove: () => void;
};

export function ChainPanel(props: ChainPanelProps) {
  const { state, flags } = props;
  return (
    <aside className="side-panel chain-panel" aria-label={texts.name}>
      <ChosenThing {...props} />
      <section>
        <PanelHead
          title={texts.flags}
          note={flags.length === 0 ? undefined : texts.flagCount(flags.length)}
        />
        {flags.length === 0 ? (
          <p className="secondary-words">{texts.noFlags}</p>
        ) : (
          <>
            <Flags {...props} flags={flags.slice(0, flagsAtOnce)} />
            {flags.length <= flagsAtOnce ? null : (
              <details>
                <summary>{texts.moreFlags(flags.length - flagsAtOnce)}</summary>
                <Flags {...props} flags={flags.slice(flagsAtOnce)} />
              </details>
            )}
          </>
        )}
      </section>
      <section>
        <PanelHead title={texts.nodes} note={String(state.nodes.size)} />
        <ul className="chain-list">
          {[...state.nodes.values()].sort(byKind).map((node) => (
            <li key={node.id}>
              <NodeButton {...props} node={node} />
            </li>
          ))}
        </ul>
      </section>
      <section>
        <PanelHead title={texts.links} note={String(state.links.size)} />
        {state.links.size === 0 ? <p className="secondary-words">{texts.noLinks}</p> : null}
        <ul className="chain-list">
          {[...state.links.values()].map((link) => (
            <li key={link.id}>
              <LinkButton {...props} link={link} />
              <p className="secondary-words">{link.reason === '' ? texts.noReason : link.reason}</p>
            </li>
          ))}
        </ul>
      </section>
    </aside>
  );
}

function Flags(props: ChainPanelProps) {
  return (
    <ul className="chain-flags">
      {props.flags.map((flag) => (
        <li key={[flag.flag, ...flag.nodeIds, ...flag.linkIds, ...flag.findingIds].join()}>
          <Flag {...props} flag={flag} />
        </li>
      ))}
    </ul>
  );
}

function byKind(one: HeldNode, other: HeldNode): number {
  return chainNodeKinds.indexOf(one.kind) - chainNodeKinds.indexOf(other.kind);
}

function ChosenThing(props: ChainPanelProps) {
  const { state, chosen } = props;
  const node = chosen?.what === 'node' ? state.nodes.get(chosen.id) : undefined;
  const link = chosen?.what === 'link' ? state.links.get(chosen.id) : undefined;
  if (node !== undefined) return <ChosenNode {...props} node={node} />;
  if (link !== undefined) return <ChosenLink {...props} link={link} />;
  return (
    <section>
      <PanelHead title={texts.nothingChosen} />
      <p className="secondary-words">{texts.nothingChosenWords}</p>
    </section>
  );
}

function ChosenNode(props: ChainPanelProps & { node: HeldNode }) {
  const { caseId, state, node, readOnly, wordsOf } = props;
  const said = wordsOf(node);
  const links = [...state.links.values()];
  const causes = links.filter((link) => link.effectId === node.id);
  const effects = links.filter((link) => link.causeId === node.id);
  return (
    <section className="chain-chosen">
      <PanelHead title={texts.chosenNode} note={said.head} />
      <p className="chain-chosen-words">
        {said.class === null ? null : <ClassBadge of={said.class} />} {said.words}
      </p>
      <Ends {...props} title={texts.causes} none={texts.noCauses} links={causes} end="causeId" />
      <Ends {...props} title={texts.effects} none={texts.noEffects} links={effects} end="effectId" />
      <div className="chain-actions">
        {node.kind === 'finding' ? (
          <Link className="button button-quiet" href={findingAddress(caseId, node.findingId)}>
            {texts.toFinding}
          </Link>
        ) : null}
        {readOnly ? null : (
          <>
            <Button shortcut="L" onClick={props.onBeginLink}>
              {chainTexts.link}
            </Button>
            {node.kind === 'finding' || node.kind === 'claim' ? null : (
              <Button onClick={props.onChange}>{texts.change}</Button>
            )}
            <Button kind="danger" aria-keyshortcuts="Delete" onClick={props.onRemove}>
              {texts.remove}
            </Button>
          </>
        )}
      </div>
    </section>
  );
}

function Ends(
  props: ChainPanelProps & {
    title: string;
    none: string;
    links: readonly HeldLink[];
    end: 'causeId' | 'effectId';
  },
) {
  const { title, none, links, end, nameOf, onChooseLink } = props;
  return (
    <div className="chain-ends">
      <h3>{title}</h3>
      {links.length === 0 ? <p className="secondary-words">{none}</p> : null}
      <ul className="chain-list">
        {links.map((link) => (
          <li key={link.id}>
            <ListButton chosen={false} onClick={() => onChooseLink(link.id)}>
              {nameOf(link[end])}
              <span className="secondary-words"> {chainFigureTexts.certainties[link.certainty]}</span>
            </ListButton>
          </li>
        ))}
      </ul>
    </div>
  );
}

function ChosenLink(props: ChainPanelProps & { link: HeldLink }) {
  const { link, readOnly, nameOf, onGoTo } = props;
  return (
    <section className="chain-chosen">
      <PanelHead title={texts.chosenLink} note={chainFigureTexts.certainties[link.certainty]} />
      <ul className="chain-list">
        <li>
          <span className="secondary-words">{chainTexts.linkForm.cause} </span>
          <ListButton chosen={false} onClick={() => onGoTo(link.causeId)}>
            {nameOf(link.causeId)}
          </ListButton>
        </li>
        <li>
          <span className="secondary-words">{chainTexts.linkForm.effect} </span>
          <ListButton chosen={false} onClick={() => onGoTo(link.effectId)}>
            {nameOf(link.effectId)}
          </ListButton>
        </li>
      </ul>
      <div className="chain-ends">
        <h3>{texts.reason}</h3>
        <p className="chain-reason">{link.reason === '' ? texts.noReason : link.reason}</p>
      </div>
      {readOnly ? null : (
        <div className="chain-actions">
          <Button onClick={props.onChange}>{texts.change}</Button>
          <Button kind="danger" aria-keyshortcuts="Delete" onClick={props.onRemove}>
            {texts.removeLink}
          </Button>
        </div>
      )}
    </section>
  );
}

/** Leads to what the flag speaks of: its link, its box, or the finding that is not in the chain. */
function Flag(props: ChainPanelProps & { flag: ChainFlag }) {
  const { caseId, flag, onGoTo, onChooseLink } = props;
  const [nodeId] = flag.nodeIds;
  const [linkId] = flag.linkIds;
  const [findingId] = flag.findingIds;
  if (flag.flag === 'no-reason' && linkId !== undefined) {
    return (
      <ListButton chosen={false} onClick={() => onChooseLink(linkId)}>
        {flag.sentence}
      </ListButton>
    );
  }
  if (nodeId !== undefined) {
    return (
      <ListButton chosen={false} onClick={() => onGoTo(nodeId)}>
        {flag.sentence}
      </ListButton>
    );
  }
  return findingId === undefined ? (
    flag.sentence
  ) : (
    <Link className="chain-list-button" href={findingAddress(caseId, findingId)}>
      {flag.sentence}
    </Link>
  );
}

function NodeButton(props: ChainPanelProps & { node: HeldNode }) {
  const { node, chosen, wordsOf, onGoTo } = props;
  const said = wordsOf(node);
  return (
    <ListButton chosen={chosen?.what === 'node' && chosen.id === node.id} onClick={() => onGoTo(node.id)}>
      {said.class === null ? null : (
        <span aria-hidden="true">
          <ClassBadge of={said.class} />{' '}
        </span>
      )}
      <span className="secondary-words">{said.head}: </span>
      {said.words}
    </ListButton>
  );
}

function LinkButton(props: ChainPanelProps & { link: HeldLink }) {
  const { link, chosen, nameOf, onChooseLink } = props;
  const { certainties } = chainFigureTexts;
  return (
    <ListButton
      chosen={chosen?.what === 'link' && chosen.id === link.id}
      onClick={() => onChooseLink(link.id)}
    >
      {chainTexts.linkName(nameOf(link.causeId), nameOf(link.effectId), certainties[link.certainty])}
    </ListButton>
  );
}

function ListButton(props: { chosen: boolean; onClick: () => void; children: ReactNode }) {
  return (
    <button
      type="button"
      className="chain-list-button"
      aria-current={props.chosen ? 'true' : undefined}
      onClick={props.onClick}
    >
      {props.children}
    </button>
  );
}
