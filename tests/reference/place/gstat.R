# Writes gstat-values.json: variogram fits, kriging, leave-one-out and REML on the zinc of the river Meuse (package sp),
# kriging with known errors of the stations by plain matrices, and geodesic distances, to compare with.
# Run: Rscript gstat.R   (R with gstat, sp, nlme, sf, lwgeom)
suppressMessages({ library(sp); library(gstat); library(nlme); library(sf) })
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
numbers <- function(x, digits = 12) paste0("[", paste(trimws(formatC(as.numeric(x), digits = digits, format = "g")), collapse = ", "), "]")
object <- function(...) { l <- list(...); paste0("{", paste0('"', names(l), '": ', unlist(l), collapse = ", "), "}") }

data(meuse); data(meuse.grid)
zinc <- data.frame(x = meuse$x / 1000, y = meuse$y / 1000, zinc = meuse$zinc, logZinc = log(meuse$zinc), rootDist = sqrt(meuse$dist))
points <- meuse.grid[c(10, 700, 1500, 2300, 3100), c("x", "y", "dist")]
points <- data.frame(x = points$x / 1000, y = points$y / 1000, rootDist = sqrt(points$dist))
on <- zinc[7, c("x", "y", "rootDist")]
points <- rbind(points, on)
stations <- zinc; coordinates(stations) <- ~ x + y
places <- points; coordinates(places) <- ~ x + y

cutoff <- 1.6
cloud <- variogram(logZinc ~ 1, stations, cutoff = cutoff, width = cutoff / 16)
fitOf <- function(kind, range) {
  f <- fit.variogram(cloud, vgm(1, kind, range, 1))
  object(nugget = f$psill[1], sill = f$psill[2], rangeKm = f$range[2], error = attr(f, "SSErr"))
}
krigingOf <- function(formula, model) {
  k <- krige(formula, stations, places, model, debug.level = 0)
  cv <- krige.cv(formula, stations, model, nfold = nrow(zinc), debug.level = 0, verbose = FALSE)
  object(nugget = model$psill[1], sill = model$psill[2], rangeKm = model$range[2],
         estimates = numbers(k$var1.pred), variances = numbers(k$var1.var),
         leftOutResiduals = numbers(cv$residual), leftOutVariances = numbers(cv$var1.var))
}
remlOf <- function(formula, structure) {
  g <- gls(formula, zinc, correlation = structure, method = "REML")
  s <- coef(g$modelStruct$corStruct, unconstrained = FALSE)
  object(rangeKm = s[1], nuggetShare = s[2], variance = formatC(g$sigma^2, digits = 10), coefficients = numbers(coef(g)),
         logLikelihood = formatC(as.numeric(logLik(g)), digits = 10, format = "g"))
}

# Seven stations on a plane whose errors differ: everything by plain matrices, leave-one-out by leaving one out.
net <- data.frame(x = c(0, 30, 55, 80, 20, 70, 45), y = c(0, 12, 40, 5, 60, 70, 22), elevationM = c(10, 200, 450, 60, 320, 700, 150),
                  value = c(-4.1, -6.0, -8.8, -3.9, -7.7, -9.6, -5.2), errorVariance = c(0.05, 0.4, 0, 0.1, 0.9, 0.02, 0.3))
sill <- 2; range <- 60; nugget <- 0.15
blup <- function(d, x0, y0, e0) {
  h <- as.matrix(dist(d[, 1:2]))
  C <- sill * exp(-h / range) + diag(nugget + d$errorVariance)
  X <- cbind(1, d$elevationM); f <- c(1, e0)
  c0 <- sill * exp(-sqrt((d$x - x0)^2 + (d$y - y0)^2) / range)
  V <- solve(C); A <- solve(t(X) %*% V %*% X)
  m <- t(f - t(X) %*% V %*% c0) %*% A
  w <- V %*% (c0 + X %*% t(m))
  r <- f - t(X) %*% V %*% c0
  list(weights = as.vector(w), estimate = sum(w * d$value),
       variance = as.numeric(sill + nugget - t(c0) %*% V %*% c0 + t(r) %*% A %*% r), beta = A %*% t(X) %*% V %*% d$value)
}
at <- blup(net, 40, 35, 260)
left <- lapply(1:7, function(i) blup(net[-i, ], net$x[i], net$y[i], net$elevationM[i]))

# Geodesics on WGS 84 by GeographicLib (through lwgeom).
pairs <- rbind(c(52.5, 13.4, 51.5, -0.1), c(65, 179.8, 65.4, -179.7), c(-17.8, 177.9, -16.9, -179.9), c(89.5, 10, 89.2, -170),
               c(-90, 0, -77.8, 166.7), c(37.1, -3.6, 37.2, -3.5), c(-33.9, 18.4, -34.6, -58.4))
suppressMessages(sf_use_s2(FALSE))
metres <- apply(pairs, 1, function(p) as.numeric(lwgeom::st_geod_length(
  st_sfc(st_linestring(rbind(c(p[2], p[1]), c(p[4], p[3]))), crs = 4326))))

sph <- vgm(0.59, "Sph", 0.897, 0.0507); expo <- vgm(0.72, "Exp", 0.45, 0.0); resid <- vgm(0.15, "Exp", 0.34, 0.057)
about <- paste0("R ", getRversion(), ", gstat ", packageVersion("gstat"), ", sp ", packageVersion("sp"), ", nlme ",
                packageVersion("nlme"), ", lwgeom ", packageVersion("lwgeom"), "; written by gstat.R; distances in km")
cat(paste0('{\n "about": "', about, '",\n "meuse": {\n  "xKm": ', numbers(zinc$x), ',\n  "yKm": ', numbers(zinc$y),
  ',\n  "zinc": ', numbers(zinc$zinc), ',\n  "dist": ', numbers(meuse$dist), '\n },\n "points": {"xKm": ', numbers(points$x), ', "yKm": ',
  numbers(points$y), ', "rootDist": ', numbers(points$rootDist), '},\n "variogram": {\n  "cutoffKm": ',
  cutoff, ', "pairs": ', numbers(cloud$np), ',\n  "meanKm": ', numbers(cloud$dist),
  ',\n  "semivariance": ', numbers(cloud$gamma), ',\n  "spherical": ', fitOf("Sph", 0.3), ',\n  "exponential": ', fitOf("Exp", 0.3),
  '\n },\n "ordinarySpherical": ', krigingOf(logZinc ~ 1, sph), ',\n "ordinaryExponential": ', krigingOf(logZinc ~ 1, expo),
  ',\n "universal": ', krigingOf(logZinc ~ rootDist, resid),
  ',\n "reml": {\n  "exponential": ', remlOf(logZinc ~ rootDist, corExp(c(0.3, 0.3), form = ~ x + y, nugget = TRUE)),
  ',\n  "spherical": ', remlOf(logZinc ~ rootDist, corSpher(c(0.6, 0.3), form = ~ x + y, nugget = TRUE)),
  '\n },\n "errors": {"xKm": ', numbers(net$x), ', "yKm": ', numbers(net$y), ', "elevationM": ', numbers(net$elevationM), ', "value": ', numbers(net$value),
  ', "errorVariance": ', numbers(net$errorVariance), ',\n  "sill": 2, "rangeKm": 60, "nugget": 0.15, "point": {"xKm": 40, "yKm": 35, "elevationM": 260}, "weights": ',
  numbers(at$weights), ', "estimate": ', formatC(at$estimate, digits = 12), ', "variance": ', formatC(at$variance, digits = 12), ',\n  "coefficients": ', numbers(at$beta),
  ', "leftOutEstimates": ', numbers(sapply(left, `[[`, "estimate")), ', "leftOutVariances": ', numbers(sapply(left, `[[`, "variance")),
  '},\n "geodesics": {"from_lat_lon_to_lat_lon": [', paste(apply(pairs, 1, numbers), collapse = ", "), '], "metres": ', numbers(metres), '}\n}\n'),
  file = file.path(here, "gstat-values.json"))
