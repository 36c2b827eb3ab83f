import { Component, type ReactNode } from "react";
import { saveAsFile } from "../files/index.ts";

interface FaultBoundaryProps {
  readonly children: ReactNode;
}

/** Where a fault of ours stops a stage from being shown, says so, and lets the work be saved; the rest goes on. */
export class FaultBoundary extends Component<FaultBoundaryProps, { readonly fault: string | undefined }> {
  override state = { fault: undefined };

  static getDerivedStateFromError(error: unknown): { readonly fault: string } {
    return { fault: String(error) };
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === undefined) return this.props.children;
    return (
      <div className="empty" role="alert" data-testid="fault">
        <p>This stage could not be shown: a fault of ours. Your tray is kept as it is.</p>
        <p className="code">{fault}</p>
        <div className="make-buttons">
          <button type="button" onClick={() => this.setState({ fault: undefined })}>
            Show it again
          </button>
          <button type="button" onClick={saveAsFile}>
            Save the tray as a file
          </button>
        </div>
      </div>
    );
  }
}
