import type { KeyboardEvent } from 'react';

/** Enter in a list box or on a choice sends the form, as it does from a line of text. */
export function submitWithEnter(event: KeyboardEvent<HTMLFormElement>): void {
  const { target } = event;
  const takesEnterItself = target instanceof HTMLButtonElement || target instanceof HTMLTextAreaElement;
  if (event.key !== 'Enter' || event.defaultPrevented || takesEnterItself) return;
  event.preventDefault();
  event.currentTarget.requestSubmit();
}
