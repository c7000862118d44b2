import type { ComponentProps, ReactNode } from 'react';
import { classNames } from './class-names.ts';

export type ButtonKind = 'plain' | 'primary' | 'danger' | 'quiet';

export type ButtonProps = Omit<ComponentProps<'button'>, 'aria-pressed'> & {
  kind?: ButtonKind;
  /** For a button that stays down; leave it out for one that does something once. */
  pressed?: boolean | undefined;
  /** Its key, shown as a cap beside the words. */
  shortcut?: string | undefined;
  children: ReactNode;
};

export function Button({ kind = 'plain', pressed, shortcut, className, children, ...rest }: ButtonProps) {
  return (
    <button
      type="button"
      {...rest}
      aria-pressed={pressed}
      aria-keyshortcuts={shortcut ?? rest['aria-keyshortcuts']}
      className={classNames('button', `button-${kind}`, className)}
    >
      {children}
      {shortcut === undefined ? null : (
        <kbd className="kbd" aria-hidden="true">
          {shortcut}
        </kbd>
      )}
    </button>
  );
}
