/** The page: the header in 3D, its runners on the rack, its numbers beside them. */
export function App() {
  return <main>Evenrun</main>;
}
