import {
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
  type KeyboardEvent,
  type RefObject,
} from 'react';
import { useLocation } from 'wouter';
import { isWholeDamage, understoodTag } from '#analysis/search/understood-tag.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { searchAddress } from '../app/addresses.ts';
import { useAnswer } from '../api/queries.ts';
import { classNames } from '../ui/class-names.ts';
import { numberText } from '../ui/number-words.ts';
import './find-box.css';
import { focusFirstHit } from './hit-list.tsx';
import {
  forgetChoices,
  leaveOutTag,
  longestText,
  lookForTag,
  lookForText,
  lookForUnderstood,
  useSearchStore,
} from './search-store.ts';
import { offersFor, type TagOffer } from './tag-offer.ts';

/** True from leaving a screen out of its box until the box of the search screen has taken over. */
let penInHand = false;

/**
 * The one box over everything. Typing looks for words and offers the damages that fit them; choosing one looks for
 * findings with that damage, and so does Enter where the words are just those of a damage. Combobox with list autocomplete as in the ARIA Authoring Practices.
 */
export function FindBox({ wide = false }: { wide?: boolean }) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [location, navigate] = useLocation();
  const text = useSearchStore((store) => store.text);
  const tags = useSearchStore((store) => store.tags);
  const known = useAnswer('search.known-tags', {}).data ?? [];
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const offers = open ? offersFor(text, known) : [];
  const shown = offers.length > 0;

  useSlashKey(input);

  // The search screen has a header of its own: whoever was writing goes on in its box.
  useEffect(() => {
    if (penInHand) input.current?.focus();
    penInHand = false;
  }, []);

  const goToSearch = () => {
    if (location === searchAddress) return;
    penInHand = true;
    navigate(searchAddress);
  };
  const choose = (offer: TagOffer) => {
    if (location !== searchAddress) forgetChoices();
    lookForTag(offer.tag);
    setOpen(false);
    setActive(-1);
    goToSearch();
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined) {
      event.preventDefault();
      // With nothing offered the arrow goes on to what was found.
      const offered = offersFor(text, known).length > 0;
      if (event.key === 'ArrowDown' && !offered && location === searchAddress && focusFirstHit()) return;
      setOpen(true);
      // -1 is the box itself: the arrows pass through it on their way round.
      const places = offersFor(text, known).length + 1;
      setActive(((active + 1 + step + places) % places) - 1);
    } else if (event.key === 'Enter') {
      const offer = offers[active];
      setOpen(false);
      // From anywhere else it is a new search: what was chosen for the last one is not asked unseen.
      if (location !== searchAddress) forgetChoices();
      if (offer === undefined) {
        const understood = understoodTag(text, known, searchTexts.typedNames);
        if (understood !== null && isWholeDamage(understood)) lookForUnderstood(understood);
        goToSearch();
      } else choose(offer);
    } else if (event.key === 'Escape') {
      if (shown) setOpen(false);
      else lookForText('');
      setActive(-1);
    } else if (event.key === 'Backspace' && text === '') {
      const last = tags.at(-1);
      if (last !== undefined && location === searchAddress) leaveOutTag(last.key);
    }
  };

  return (
    <search className={classNames('find-box', wide && 'find-box-wide')}>
      <input
        ref={input}
        type="text"
        role="combobox"
        className="control find-input"
        aria-label={shellTexts.findLabel}
        aria-autocomplete="list"
        aria-expanded={shown}
        aria-controls={`${id}-offers`}
        aria-activedescendant={shown && active >= 0 ? `${id}-${active}` : undefined}
        aria-keyshortcuts="/"
        autoComplete="off"
        spellCheck={false}
        maxLength={longestText}
        placeholder={wide ? searchTexts.inputHint : shellTexts.find}
        value={text}
        onChange={(event) => {
          lookForText(event.currentTarget.value);
          setOpen(true);
          setActive(-1);
        }}
        onKeyDown={onKeyDown}
        onBlur={() => setOpen(false)}
      />
      <ul
        id={`${id}-offers`}
        role="listbox"
        aria-label={searchTexts.suggestions}
        className="find-offers"
        hidden={!shown}
      >
        {offers.map((offer, index) => (
          <li
            key={offer.label}
            id={`${id}-${index}`}
            role="option"
            aria-selected={index === active}
            className={classNames('find-offer', index === active && 'find-offer-active')}
            // The box must keep the focus while an offer is pressed.
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => choose(offer)}
          >
            <span>{offer.label}</span>
            {offer.cases === null ? null : (
              <span className="secondary-words nowrap">
                {searchTexts.casesWithTag(numberText(offer.cases), offer.cases === 1)}
              </span>
            )}
          </li>
        ))}
      </ul>
    </search>
  );
}

/** "/" goes to the box from anywhere but a place where one writes. */
function useSlashKey(input: RefObject<HTMLInputElement | null>): void {
  // Before the screen is painted: whoever sees it may press the key.
  useLayoutEffect(() => {
    const onKeyDown = (event: globalThis.KeyboardEvent) => {
      const from = event.target;
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
      if (from instanceof HTMLElement && from.closest('input, textarea, select, dialog, [contenteditable]'))
        return;
      event.preventDefault();
      input.current?.focus();
      input.current?.select();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [input]);
}
