import { byPlaceIn, type FileProblem, type FileRow } from './file-layout';
import { COLUMN_KEYS, type ColumnKey } from './list-columns';

export type ListRow = FileRow<ColumnKey>;
export type ListProblem = FileProblem<ColumnKey>;

export const byPlace = byPlaceIn(COLUMN_KEYS);
