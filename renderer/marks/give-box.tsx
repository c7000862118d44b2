/**
 * One box that gives marks to a finding: what is listed narrows as one types, Enter takes the line that is marked.
 * Combobox with a list box always in sight, as in the ARIA Authoring Practices (editable combobox, list autocomplete).
 */
import { useEffect, useId, useMemo, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import {
  giveOffers,
  likeliestOffer,
  type GiveOffer,
  type GiveQuestion,
} from '#analysis/marks/give-offers.ts';
import type { FindingId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { classNames } from '../ui/class-names.ts';
import { PanelHead } from '../ui/side-panel.tsx';

const texts = marksTexts.giving;

export function GiveBox(props: {
  question: Omit<GiveQuestion, 'typed'>;
  title: string;
  /** The finding that all of the marks are given to now. */
  givenTo: FindingId | null;
  onOffer: (offer: GiveOffer) => void;
  onMore: () => void;
  onLater: () => void;
}) {
  const { question, title, givenTo, onOffer, onMore, onLater } = props;
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const [typed, setTyped] = useState('');
  /** Null until one walks through the list: then the likeliest is marked. */
  const [active, setActive] = useState<number | null>(null);
  const { pack, findings, recent, parts } = question;
  const offers = useMemo(
    () => giveOffers({ pack, findings, recent, parts, typed }),
    [pack, findings, recent, parts, typed],
  );
  const marked = Math.min(active ?? likeliestOffer(offers), offers.length - 1);

  useEffect(() => input.current?.focus(), []);
  useEffect(() => {
    list.current?.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' });
  }, [marked, offers]);

  const choose = (index: number) => {
    const offer = offers[index];
    if (offer !== undefined) onOffer(offer);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.nativeEvent.isComposing) return;
    const step = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }[event.key];
    if (step !== undefined) setActive(Math.min(Math.max(marked + step, 0), offers.length - 1));
    else if (event.key === 'Enter') choose(marked);
    else return;
    event.preventDefault();
  };

  return (
    <section
      className="marks-give"
      aria-label={title}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        onLater();
      }}
    >
      <PanelHead title={title} />
      <input
        ref={input}
        type="text"
        role="combobox"
        className="control"
        aria-label={texts.box}
        aria-autocomplete="list"
        aria-expanded={offers.length > 0}
        aria-controls={`${id}-list`}
        aria-activedescendant={marked >= 0 ? `${id}-${marked}` : undefined}
        autoComplete="off"
        spellCheck={false}
        maxLength={100}
        placeholder={texts.boxHint}
        value={typed}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          setActive(null);
        }}
        onKeyDown={onKeyDown}
      />
      <div id={`${id}-list`} ref={list} role="listbox" aria-label={texts.list} className="give-list">
        {groups.map((group) => {
          const lines = offers.flatMap((offer, index) =>
            groupOf(offer) === group ? [{ offer, index }] : [],
          );
          return lines.length === 0 ? null : (
            <div key={group} role="group" aria-labelledby={`${id}-${group}`}>
              <p id={`${id}-${group}`} role="presentation" className="give-group">
                {texts.groups[group]}
              </p>
              {lines.map(({ offer, index }) => (
                <div
                  key={keyOf(offer)}
                  id={`${id}-${index}`}
                  role="option"
                  aria-selected={index === marked}
                  className={classNames('give-offer', index === marked && 'give-offer-active')}
                  // The box must keep the keyboard while a line is pressed.
                  onPointerDown={(event) => event.preventDefault()}
                  onMouseDown={(event) => event.preventDefault()}
                  onClick={() => choose(index)}
                >
                  <OfferWords
                    offer={offer}
                    given={offer.offer === 'finding' && offer.finding.id === givenTo}
                  />
                </div>
              ))}
            </div>
          );
        })}
      </div>
      {offers.length === 0 ? <p className="secondary-words">{texts.nothing}</p> : null}
      {parts.length === 0 ? <p className="secondary-words">{texts.noPart}</p> : null}
      <div className="marks-give-foot">
        <Button kind="quiet" title={texts.moreHint} onClick={onMore}>
          {texts.more}
        </Button>
        <Button onClick={onLater} shortcut="Esc" title={texts.laterHint}>
          {texts.later}
        </Button>
        <Button kind="primary" shortcut="↵" disabled={marked < 0} onClick={() => choose(marked)}>
          {texts.choose}
        </Button>
      </div>
    </section>
  );
}

/** As giveOffers orders them, so that the arrow keys go down the list as it is seen. */
const groups = ['numbered', 'given', 'shown', 'elsewhere', 'new'] as const;

function groupOf(offer: GiveOffer): (typeof groups)[number] {
  return offer.offer === 'new' ? 'new' : offer.nearness;
}

function OfferWords({ offer, given }: { offer: GiveOffer; given: boolean }): ReactNode {
  if (offer.offer === 'new') {
    return (
      <>
        <span className="give-new" aria-hidden="true">
          +
        </span>
        <span className="give-kind">{offer.kind}</span>
        <span className="give-place">{offer.place}</span>
      </>
    );
  }
  const { finding } = offer;
  const notes = [
    offer.place,
    finding.presence === 'present' ? '' : commonTexts.presences[finding.presence],
    given ? texts.given : '',
  ].filter((note) => note !== '');
  return (
    <>
      <ClassBadge of={finding.class} />
      <b className="give-kind">
        {finding.number} {offer.kind}
      </b>
      <span className="give-place">{notes.join(' · ')}</span>
    </>
  );
}

function keyOf(offer: GiveOffer): string {
  if (offer.offer === 'finding') return offer.finding.id;
  const { component, position, zone, kind } = offer.terms;
  return [component, position, zone, kind].join('/');
}
