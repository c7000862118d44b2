/** Words being written on the photo, at their place. Enter keeps them, Escape drops them without a trace. */
import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { marksTexts } from '#shared-types/texts/marks.ts';
import type { ScreenPoint } from '#shared-types/points.ts';

/** As many characters as a text mark may have. */
const mostCharacters = 200;

export function WordsField(props: {
  /** Left end of the first baseline. */
  at: ScreenPoint;
  before: string;
  /** Null when it was left without words. `byKey`: Enter or Escape, so that the keyboard goes back to the photo. */
  onDone: (words: string | null, byKey: boolean) => void;
}) {
  const { at, before, onDone } = props;
  const [words, setWords] = useState(before);
  const field = useRef<HTMLInputElement>(null);
  const done = useRef(false);

  useEffect(() => {
    field.current?.focus({ preventScroll: true });
    field.current?.select();
  }, []);

  const end = (keep: boolean, byKey: boolean) => {
    if (done.current) return;
    done.current = true;
    const written = words.replace(/\s+/g, ' ').trim();
    onDone(keep && written !== '' ? written : null, byKey);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    // The well has deeds of its own for most keys.
    event.stopPropagation();
    if (event.nativeEvent.isComposing) return;
    if (event.key === 'Enter') end(true, true);
    else if (event.key === 'Escape') end(false, true);
    else return;
    event.preventDefault();
  };

  return (
    <input
      ref={field}
      className="marks-words"
      aria-label={marksTexts.wordsField}
      autoComplete="off"
      maxLength={mostCharacters}
      style={{ left: at.x, top: at.y }}
      value={words}
      onChange={(event) => setWords(event.currentTarget.value)}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => event.stopPropagation()}
      onPointerDown={(event) => event.stopPropagation()}
      onDoubleClick={(event) => event.stopPropagation()}
      // What was written is kept wherever the hand goes next.
      onBlur={(event) => {
        event.stopPropagation();
        end(true, false);
      }}
    />
  );
}
