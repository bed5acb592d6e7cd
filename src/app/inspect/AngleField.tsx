/** An angle in degrees; `90/4` and `45+7.5` are understood. */
import { NumberField, type NumberFieldProps } from './NumberField';

/** @param props.value degrees */
export const AngleField = (props: Omit<NumberFieldProps, 'quantity'>) => <NumberField quantity="angle" {...props} />;
