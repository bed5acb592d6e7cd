/** For a field that takes whatever it reads: nothing is ever refused. */
export const always =
  <A extends readonly unknown[]>(take: (...given: A) => void) =>
  (...given: A): null => {
    take(...given);
    return null;
  };
