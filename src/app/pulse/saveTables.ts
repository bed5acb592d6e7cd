/** The run as tables: the probes over time, and every cell at the last instant; the same files as the command line writes. */
import { probesCsv, profileCsv, profilePath } from '../../pulse/rig/csv';
import { saveBlob } from '../actions/save';
import { stemOf } from './savePicture';
import type { Seen } from './shown';

const saveText = (text: string, name: string) =>
  saveBlob(new Blob([text], { type: 'text/csv' }), name, 'Table', '.csv');

export const saveProbes = ({ run, name }: Seen): Promise<string | null> =>
  saveText(probesCsv(run), `${stemOf(name)}.csv`);

export const saveProfile = ({ run, name }: Seen): Promise<string | null> =>
  saveText(profileCsv(run), profilePath(`${stemOf(name)}.csv`));
