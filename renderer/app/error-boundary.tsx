import { Component, type ErrorInfo, type ReactNode } from 'react';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { Button } from '../ui/button.tsx';
import { noteFault } from './fault.ts';

type Props = {
  /** Which part of the page this is, for the log. */
  where: string;
  children: ReactNode;
};

/** Holds a mistake in one screen where it is: the rest of the page stays, and the log gets the fault. */
export class ErrorBoundary extends Component<Props, { faulted: boolean }> {
  override state = { faulted: false };

  static getDerivedStateFromError() {
    return { faulted: true };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo) {
    noteFault(
      this.props.where,
      error instanceof Error ? `${error.stack ?? error.message}${info.componentStack ?? ''}` : error,
    );
  }

  override render() {
    if (!this.state.faulted) return this.props.children;
    return (
      <section className="state-place" role="alert">
        <h1>{shellTexts.fault.heading}</h1>
        <div className="state-words">
          <p>{shellTexts.fault.words}</p>
          <p>{shellTexts.fault.noted}</p>
        </div>
        <div className="state-actions">
          <Button kind="primary" onClick={() => this.setState({ faulted: false })}>
            {shellTexts.fault.again}
          </Button>
          <Button onClick={() => window.location.reload()}>{commonTexts.reload}</Button>
        </div>
      </section>
    );
  }
}
