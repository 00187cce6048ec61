import { Component, type ReactNode, Suspense } from 'react';
import { Unfetched } from './Unfetched.tsx';

interface Props {
  readonly waiting: ReactNode;
  readonly children: ReactNode;
}

/** What comes in a file of its own: words while it comes, and words if it does not, while the rest of the page stands. */
export const Later = ({ waiting, children }: Props) => (
  <Guard>
    <Suspense fallback={waiting}>{children}</Suspense>
  </Guard>
);

/** React tells of a failed piece to a class alone, and writes the reason on the console. */
class Guard extends Component<{ readonly children: ReactNode }, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override render() {
    return this.state.failed ? <Unfetched /> : this.props.children;
  }
}
