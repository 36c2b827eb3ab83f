/** The flat parts, true to each other in scale; they reshape while the drawing is dragged. */
export function Shelf() {
  return <section className="shelf" aria-label="Flat parts" data-testid="shelf" />;
}
