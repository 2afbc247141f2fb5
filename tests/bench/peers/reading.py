"""Reads the fields of forms with other tools, and prints what each file took: milliseconds by the clock and of the
processor, as JSON. pikepdf runs in this process, once before it is measured; qpdf and pdftk are called for each file.

    /usr/bin/python3 reading.py FOLDER
"""
import json
import os
import resource
import shutil
import subprocess
import sys
import time

# Files for which a program is called.
MOST = 100


def processor():
    used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(one.ru_utime + one.ru_stime for one in used)


def measured(read, paths):
    taken = []
    for path in paths:
        clock, used = time.perf_counter(), processor()
        read(path)
        taken.append([1000 * (time.perf_counter() - clock), 1000 * (processor() - used)])
    return taken


def calling(*command):
    def read(path):
        full = [path if word == "FILE" else word for word in command]
        subprocess.run(full, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, check=False)

    return read


folder = sys.argv[1]
paths = [os.path.join(folder, name) for name in sorted(os.listdir(folder))]
ways = {}
try:
    import pikepdf

    def by_pikepdf(path):
        with pikepdf.open(path) as pdf:
            return [(str(one.get("/T", "")), str(one.get("/V", ""))) for one in pdf.Root.AcroForm.Fields]

    measured(by_pikepdf, paths)
    ways["pikepdf"] = measured(by_pikepdf, paths)
except ImportError:
    pass
for program, *rest in (("qpdf", "--json", "FILE"), ("pdftk", "FILE", "dump_data_fields_utf8")):
    if shutil.which(program):
        ways[" ".join([program, *rest])] = measured(calling(program, *rest), paths[:MOST])
print(json.dumps(ways))
