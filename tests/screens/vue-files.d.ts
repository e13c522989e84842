/// <reference path="../../frontend/src/vue-files.d.ts" />
