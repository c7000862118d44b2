import { useEffect, useId, useRef, type KeyboardEvent, type ReactNode, type SyntheticEvent } from 'react';
import { commonTexts } from '#shared-types/texts/common.ts';
import { Button } from './button.tsx';
import { classNames } from './class-names.ts';
import { Toaster } from './toaster.tsx';

export type DialogProps = {
  open: boolean;
  title: string;
  /** Escape, the close button and a cancel button end here. */
  onClose: () => void;
  /** With it the dialog is a form: Enter in a line, or a button of type submit, ends here. */
  onSubmit?: () => void;
  /** Buttons, the one that does it last. */
  foot?: ReactNode;
  wide?: boolean;
  /** Nothing but text: then the text itself can be reached, to scroll it by keys. */
  reading?: boolean;
  children: ReactNode;
};

/** A modal dialog. Focus goes in, stays in, and goes back to where it was. */
export function Dialog({ open, ...rest }: DialogProps) {
  return open ? <OpenDialog {...rest} /> : null;
}

function OpenDialog(props: Omit<DialogProps, 'open'>) {
  const { title, onClose, onSubmit, foot, wide = false, reading = false, children } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();

  useEffect(() => {
    const shown = dialog.current;
    const before = document.activeElement;
    shown?.showModal();
    // Into the first field, not onto the button that closes.
    shown?.querySelector<HTMLElement>(firstStop)?.focus();
    return () => {
      shown?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);

  const submit = (event: SyntheticEvent) => {
    event.preventDefault();
    onSubmit?.();
  };

  const body = (
    <>
      <div className="dialog-body" tabIndex={reading ? 0 : undefined}>
        {children}
      </div>
      {foot === undefined ? null : <div className="dialog-foot">{foot}</div>}
    </>
  );

  return (
    <dialog
      ref={dialog}
      className={classNames('dialog', wide && 'dialog-wide')}
      aria-labelledby={titleId}
      onKeyDown={keepTabInside}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className="dialog-head">
        <h2 id={titleId}>{title}</h2>
        <Button kind="quiet" className="dialog-close" aria-label={commonTexts.close} onClick={onClose}>
          ×
        </Button>
      </div>
      {onSubmit === undefined ? (
        body
      ) : (
        <form className="dialog-form" noValidate onSubmit={submit}>
          {body}
        </form>
      )}
      <Toaster />
    </dialog>
  );
}

const focusable =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), [tabindex="0"]';

const firstStop =
  '.dialog-body :is(input, select, textarea, button):not(:disabled), .dialog-foot button:not(:disabled)';

/** The browser makes the page behind inert, but would let Tab leave for its own bars. */
function keepTabInside(event: KeyboardEvent<HTMLDialogElement>): void {
  if (event.key !== 'Tab') return;
  const stops = [...event.currentTarget.querySelectorAll<HTMLElement>(focusable)];
  const first = stops[0];
  const last = stops.at(-1);
  const here = document.activeElement;
  if (event.shiftKey ? here === first || here === event.currentTarget : here === last) {
    event.preventDefault();
    (event.shiftKey ? last : first)?.focus();
  }
}
