// Reads 3MF files by lib3mf (1.8, Debian: lib3mf-dev) in strict mode; one line a file, exit code 1 when one is refused.
#include "Model/COM/NMR_DLLInterfaces.h"
#include <cstdio>

using namespace NMR;

int main(int count, char **files) {
  int refused = 0;
  for (int i = 1; i < count; i++) {
    PLib3MFModel *model;
    PLib3MFModelReader *reader;
    lib3mf_createmodel(&model);
    lib3mf_model_queryreader(model, "3mf", &reader);
    lib3mf_reader_setstrictmodeactive(reader, true);
    const int result = lib3mf_reader_readfromfileutf8(reader, files[i]);
    unsigned warnings = 0;
    lib3mf_reader_getwarningcount(reader, &warnings);
    int objects = 0, sound = 0;
    PLib3MFModelResourceIterator *each;
    if (!lib3mf_model_getmeshobjects(model, &each)) {
      BOOL more = 0;
      while (!lib3mf_resourceiterator_movenext(each, &more) && more) {
        PLib3MFModelMeshObject *object;
        BOOL good = 0;
        lib3mf_resourceiterator_getcurrent(each, (PLib3MFModelResource **)&object);
        lib3mf_meshobject_ismanifoldandoriented(object, &good);
        objects++;
        sound += good ? 1 : 0;
      }
    }
    printf("%s: result %d, %u warnings, %d objects, %d of them closed and oriented\n", files[i], result, warnings, objects, sound);
    if (result != 0 || warnings > 0 || sound < objects || objects == 0) refused = 1;
  }
  return refused;
}
