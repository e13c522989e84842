/** IAPWS R7-97(2012), table 34: coefficients of the saturation equation (region 4), for MPa and K. */
export const n1 = 0.11670521452767e4;
export const n2 = -0.72421316703206e6;
export const n3 = -0.17073846940092e2;
export const n4 = 0.1202082470247e5;
export const n5 = -0.32325550322333e7;
export const n6 = 0.1491510861353e2;
export const n7 = -0.48232657361591e4;
export const n8 = 0.40511340542057e6;
export const n9 = -0.23855557567849;
export const n10 = 0.65017534844798e3;
