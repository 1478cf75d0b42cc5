/** Format and version of the typed form. Adding words does not raise it; changing a meaning does. */
export const FORMAT_NAME = "deepwake/1";
