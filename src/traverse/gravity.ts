/** Standard acceleration of free fall, m/s² (ISO 80000-3; 3rd CGPM, 1901). */
export const G_MPS2 = 9.80665;
