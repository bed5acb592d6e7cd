/** Why an STL file was refused: a clause that follows the file's name, such as "it is cut short …". */
export class StlError extends Error {
  override readonly name = 'StlError';
}
