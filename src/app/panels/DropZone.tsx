/** The whole page takes dropped files; while they hover, it says so. */
import { useEffect, useState } from 'react';
import { openPicked } from '../actions/open';
import { pickedFromDrop } from '../files/pickers';

export function DropZone() {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const drag = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      void pickedFromDrop(event.dataTransfer?.items).then(openPicked);
    };
    addEventListener('dragover', drag);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', drag);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, []);
  return over ? (
    <div className="drop" aria-hidden="true">
      <p>Drop a design here, with the meshes it names</p>
    </div>
  ) : null;
}
