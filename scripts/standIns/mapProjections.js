/**
 * Stands in for the charts library's map projections: no figure of the site is a map, and they would be
 * an eighth of the library's script.
 */
function refuse() {
  throw new Error('a map projection was asked of a chart, but the browser script is built without them');
}

/** Asked for while the library is loaded; refuses once it is used. */
const transformOfNothing = () => ({ stream: refuse });

export {
  refuse as geoAlbers,
  refuse as geoAlbersUsa,
  refuse as geoAzimuthalEqualArea,
  refuse as geoAzimuthalEquidistant,
  refuse as geoCentroid,
  refuse as geoClipRectangle,
  refuse as geoConicConformal,
  refuse as geoConicEqualArea,
  refuse as geoConicEquidistant,
  refuse as geoEqualEarth,
  refuse as geoEquirectangular,
  refuse as geoGnomonic,
  refuse as geoGraticule10,
  refuse as geoMercator,
  refuse as geoOrthographic,
  refuse as geoPath,
  refuse as geoStereographic,
  refuse as geoStream,
  refuse as geoTransverseMercator,
  transformOfNothing as geoTransform,
};
