/** A printed page has two columns, each as wide as this on A4, in millimeters; on Letter they are a little wider. */
export const COLUMN = 84;
