/** Money as it is written on a bill: two decimals, the currency behind. */
export const moneyWords = (value: number, currency: string): string =>
  `${value.toFixed(2)}${currency ? ` ${currency}` : ''}`;
