/** The sheet that takes a scan or a mesh from a drawing program: whether it is open, with which file, and the action that opens it. */
import { create } from 'zustand';
import type { Action } from '../../actions/list/action';
import { needsDesign } from '../../actions/list/workActions';
import type { NamedFile } from '../../actions/readFiles';
import { whenOpened } from '../../document';

type Importing = {
  readonly open: boolean;
  /** Handed over before it opened, or while it is. */
  readonly file: NamedFile | null;
};

export const useImport = create<Importing>()(() => ({ open: false, file: null }));

/** @param file absent: the sheet asks for one */
export const openImport = (file: NamedFile | null = null): void => useImport.setState({ open: true, file });
export const closeImport = (): void => useImport.setState({ open: false, file: null });

// What was being taken was for the design before.
whenOpened(closeImport);

export const importActions: readonly Action[] = [
  {
    id: 'surroundings.import',
    name: 'Import a scan or mesh…',
    group: 'Edit',
    also: 'surrounding stl obj ply glb point cloud engine bay chassis inch unit place three points',
    ...needsDesign,
    run: () => openImport(),
  },
];
