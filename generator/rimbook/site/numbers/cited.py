"""Works that more than one topic cites."""

CROSS_BOWER = (
    "R. Cross and R. Bower, “Measurements of string tension in a tennis racket”, Sports Engineering (2001)"
)
GUM = "JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM)"
MOTT = "R. L. Mott, Machine Elements in Mechanical Design"
