"""Writes the same invented relief as GeoTIFFs and an Esri ASCII grid by GDAL (python3-rasterio), in the forms files come in.

Run by hand in this folder: python3 gdal-rasters.py
"""

import json

import numpy
import rasterio
import rasterio.shutil
from rasterio.transform import from_origin

ROWS, COLUMNS, STEP = 40, 50, 0.05
WEST, NORTH = -43.5, 32.0

row, column = numpy.mgrid[0:ROWS, 0:COLUMNS]
relief = (300 + 9 * column - 7 * row + 40 * numpy.sin(row / 3)).round().astype("int16")
relief[0:4, 0:6] = -32768  # sea

FORMS = {
    "deflate-tiled": dict(driver="GTiff", dtype="int16", compress="deflate", predictor=2, tiled=True, blockxsize=16, blockysize=16),
    "lzw-float": dict(driver="GTiff", dtype="float32", compress="lzw", predictor=3),
    "big": dict(driver="GTiff", dtype="int16", BIGTIFF="YES"),
    "ascii": dict(driver="AAIGrid", dtype="int16"),
}
NAMES = {name: f"{name}.{'asc' if form['driver'] == 'AAIGrid' else 'tif'}" for name, form in FORMS.items()}

place = dict(width=COLUMNS, height=ROWS, count=1, crs="EPSG:4326", transform=from_origin(WEST, NORTH, STEP, STEP), nodata=-32768)
for name, form in FORMS.items():
    if form["driver"] == "GTiff":
        with rasterio.open(NAMES[name], "w", **place, **form) as target:
            target.write(relief.astype(form["dtype"]), 1)

with rasterio.open("deflate-tiled.tif") as source:
    rasterio.shutil.copy(source, NAMES["ascii"], driver="AAIGrid")

utm = dict(place, crs="EPSG:32623", transform=from_origin(640000, 3500000, 5000, 5000), width=3, height=2)
with rasterio.open("projected.tif", "w", driver="GTiff", dtype="int16", **utm) as target:
    target.write(numpy.ones((2, 3), "int16"), 1)

with rasterio.open("deflate-tiled.tif") as source:
    first, last = source.xy(0, 0), source.xy(ROWS - 1, COLUMNS - 1)

with open("relief.json", "w") as target:
    json.dump(
        {
            "gdal": rasterio.__gdal_version__,
            "files": sorted(NAMES.values()),
            "first_centre": first,
            "last_centre": last,
            "nodata": -32768,
            "rows": relief.tolist(),
        },
        target,
    )
    target.write("\n")
