/** A scan as a surrounding: its file is read, kept beside the design, and checked against from then on. */
import { useRef } from 'react';
import { addSurrounding } from '../../../shared/design/edit';
import { readFiles } from '../actions/readFiles';
import { documents } from '../document';
import { linesOf, tellFailure } from '../notices';
import { addAndPick } from './inspectActions';

export function AddMesh() {
  const input = useRef<HTMLInputElement>(null);
  const read = async (files: FileList) => {
    try {
      const [file] = files;
      if (!file) return;
      const { meshes } = await readFiles([{ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }]);
      if (meshes.size === 0) throw new Error(`${file.name} is not a mesh: an .stl, .obj, .ply or .glb file is wanted.`);
      documents.addMeshes(meshes);
      addAndPick((design) => addSurrounding(design, { file: file.name }), `mesh ${file.name}`);
    } catch (error) {
      tellFailure('The mesh was not added', ...linesOf(error));
    }
  };
  return (
    <>
      <button
        type="button"
        className="chip add"
        aria-label="Add a mesh from an STL, OBJ, PLY or GLB file"
        title="Add a mesh from an STL, OBJ, PLY or GLB file"
        onClick={() => input.current?.click()}
      >
        + Mesh
      </button>
      <input
        ref={input}
        type="file"
        accept=".stl,.obj,.ply,.glb"
        hidden
        onChange={(event) => {
          if (event.target.files) void read(event.target.files);
          event.target.value = '';
        }}
      />
    </>
  );
}
