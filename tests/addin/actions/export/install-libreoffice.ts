import { findLibreOffice, HOW_TO_INSTALL, installLibreOffice } from "./libreoffice.ts";

/** Before the tests of exported files: LibreOffice is there, or is brought, or one line says what to install. */
if (findLibreOffice() === null && !(installLibreOffice() && findLibreOffice() !== null)) {
  console.error(HOW_TO_INSTALL);
  process.exitCode = 1;
}
