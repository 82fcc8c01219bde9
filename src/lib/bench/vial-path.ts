/** Mean way of the light through a kit's vial, cm. */
export const VIAL_PATH_CM = 2;
