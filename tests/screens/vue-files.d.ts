import '../../frontend/src/vue-files';
