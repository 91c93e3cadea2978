# Writes survival.json: Kaplan-Meier by R's survival package on published data sets that come with it.
#   Rscript tests/reference/life/survival.R > tests/reference/life/survival.json
# Spans are [after, until, died] with whole ages; half days of the heart data are doubled.
suppressMessages(library(survival))

number <- function(x) format(x, digits = 15, trim = TRUE, scientific = FALSE)
rows <- function(...) paste0("[", apply(cbind(...), 1, function(r) paste(number(r), collapse = ",")), "]", collapse = ",")
case <- function(name, about, after, until, died) {
  fit <- survfit(Surv(after, until, died) ~ 1)
  sprintf('"%s":{"about":"%s","spans":[%s],"times":[%s]}', name, about, rows(after, until, died),
          rows(fit$time, fit$n.risk, fit$n.event, fit$surv))
}

late <- with(ovarian, list(after = round((age - min(age)) * 8), until = futime, died = fustat))
keep <- late$after < late$until
heart2 <- transform(heart, start = 2 * start, stop = 2 * stop)
waiting <- subset(heart2, transplant == 0)
given <- subset(heart2, transplant == 1)
# Watching that pauses: everyone is away from day 61 to day 120 (doubled), as winters without a record are.
before <- transform(subset(heart2, start < 60), event = ifelse(stop <= 60, event, 0), stop = pmin(stop, 60))
after <- transform(subset(heart2, stop > 120), start = pmax(start, 120))
paused <- rbind(before, after)

cat("{", paste(c(
  sprintf('"made_by":"survival.R, %s, survival %s"', R.version.string, packageVersion("survival")),
  case("aml", "Acute myelogenous leukaemia: Miller (1981), Survival Analysis; survival::aml", 0 * aml$time, aml$time, aml$status),
  case("aml_maintained", "Its maintained group", 0 * aml$time[1:11], aml$time[1:11], aml$status[1:11]),
  case("gehan_6mp", "Remission of leukaemia under 6-MP: Gehan (1965); MASS::gehan",
       0 * MASS::gehan$time[MASS::gehan$treat == "6-MP"], MASS::gehan$time[MASS::gehan$treat == "6-MP"], MASS::gehan$cens[MASS::gehan$treat == "6-MP"]),
  case("ovarian_late", "Ovarian cancer: Edmonson et al. (1979), survival::ovarian; late entry made up from the ages",
       late$after[keep], late$until[keep], late$died[keep]),
  case("heart", "Stanford heart transplants: Crowley and Hu (1977), survival::heart; times doubled", heart2$start, heart2$stop, heart2$event),
  case("heart_transplanted", "Those transplanted: late entry at the transplant", given$start, given$stop, given$event),
  case("heart_paused", "All, with watching paused between doubled days 60 and 120", paused$start, paused$stop, paused$event)
), collapse = ","), "}\n", sep = "")
