# Writes boot.json: circular block bootstrap (fixed blocks, wrapped ends) by R's boot package on two series that come with R.
#   Rscript tests/reference/life/boot.R > tests/reference/life/boot.json
suppressMessages(library(boot))

list_of <- function(x) paste0("[", paste(format(as.numeric(x), digits = 15, trim = TRUE, scientific = FALSE), collapse = ","), "]")
case <- function(name, about, series, block) {
  statistic <- function(x) c(mean(x), sd(x), acf(x, lag.max = 1, plot = FALSE)$acf[2])
  set.seed(1)
  few <- tsboot(series, statistic, R = 20, l = block, sim = "fixed", endcorr = TRUE)
  picks <- boot.array(few)
  set.seed(2)
  many <- tsboot(series, function(x) c(mean(x), sd(x)), R = 20000, l = block, sim = "fixed", endcorr = TRUE)
  sprintf('"%s":{"about":"%s","block":%d,"series":%s,"indices":[%s],"statistics":[%s],"many":{"draws":20000,"sd_of_mean":%.10f,"sd_of_sd":%.10f,"mean_of_mean":%.10f}}',
          name, about, block, list_of(series),
          paste(apply(picks, 1, list_of), collapse = ","), paste(apply(few$t, 1, list_of), collapse = ","),
          sd(many$t[, 1]), sd(many$t[, 2]), mean(many$t[, 1]))
}
cat("{", paste(c(
  sprintf('"made_by":"boot.R, %s, boot %s"', R.version.string, packageVersion("boot")),
  case("lynx", "Canadian lynx trapped 1821-1934, logarithms: Campbell and Walker (1977); datasets::lynx", log(lynx), 6),
  case("nhtemp", "Mean yearly temperature in New Haven 1912-1971, degrees F: McNeil (1977); datasets::nhtemp", nhtemp, 4)
), collapse = ","), "}\n", sep = "")
