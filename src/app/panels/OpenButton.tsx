/** Opens a design, with the meshes it names, from this machine. */
import { useRef } from 'react';
import { askAndOpen, openFiles } from '../actions/open';
import { MESH_TYPES } from '../actions/readFiles';
import { canPick } from '../files/pickers';

export function OpenButton() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => (canPick() ? void askAndOpen() : input.current?.click())}>
        Open…
      </button>
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        multiple
        accept={`.json,${MESH_TYPES}`}
        aria-label="Design file, with its meshes"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          // Cleared so that the same file can be picked again after it was mended.
          event.target.value = '';
          void openFiles(files);
        }}
      />
    </>
  );
}
