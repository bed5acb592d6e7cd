/** A length: shown and typed in the display unit, given and taken in mm. `1 5/8 in` and `2*42.4+4` are understood. */
import { NumberField, type NumberFieldProps } from './NumberField';

/** @param props.value mm */
export const LengthField = (props: Omit<NumberFieldProps, 'quantity'>) => <NumberField quantity="length" {...props} />;
