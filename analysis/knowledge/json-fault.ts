/** Where a text stops being JSON (RFC 8259): engines say that it does, but not all of them where. */

const space = /[ \t\n\r]*/y;
const string = /"(?:[\u0020\u0021\u0023-\u005B\u005D-\uFFFF]|\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4}))*"/y;
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[Ee][+-]?\d+)?/y;
const word = /true|false|null/y;

/** What may follow at a step of the way through the text; a step that fits leads to the next. */
type Step = 'value' | 'value-or-]' | 'name' | 'name-or-}' | 'colon' | 'comma-or-]' | 'comma-or-}';

/**
 * The offset in characters, from 0, of the first thing that does not belong: the beginning of a broken string or
 * number, the length of the text where it ends too early. Null for a text that is JSON throughout.
 */
export function jsonFaultAt(text: string): number | null {
  let at = 0;
  const take = (token: RegExp): boolean => {
    token.lastIndex = at;
    if (!token.test(text)) return false;
    at = token.lastIndex;
    return true;
  };
  const takeSign = (sign: string): boolean => {
    if (text[at] !== sign) return false;
    at += 1;
    return true;
  };

  const steps: Step[] = ['value'];
  take(space);
  for (let step = steps.pop(); step !== undefined; step = steps.pop()) {
    const follows = followers(step);
    if (follows === null) return at;
    steps.push(...follows);
    take(space);
  }
  return at === text.length ? null : at;

  /** Passes what the step asks for and answers what must follow, last first; null where it is not there. */
  function followers(step: Step): Step[] | null {
    switch (step) {
      case 'value-or-]':
        return takeSign(']') ? [] : after(followers('value'), 'comma-or-]');
      case 'value':
        if (takeSign('[')) return ['value-or-]'];
        if (takeSign('{')) return ['name-or-}'];
        return take(string) || take(number) || take(word) ? [] : null;
      case 'name-or-}':
        return takeSign('}') ? [] : followers('name');
      case 'name':
        return take(string) ? ['comma-or-}', 'value', 'colon'] : null;
      case 'colon':
        return takeSign(':') ? [] : null;
      case 'comma-or-]':
        if (takeSign(']')) return [];
        return takeSign(',') ? ['comma-or-]', 'value'] : null;
      case 'comma-or-}':
        if (takeSign('}')) return [];
        return takeSign(',') ? ['name'] : null;
    }
  }
}

function after(first: Step[] | null, then: Step): Step[] | null {
  return first === null ? null : [then, ...first];
}
