export function Viewport() {
  return <div />;
}
