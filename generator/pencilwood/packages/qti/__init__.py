"""Quizzes as packages of QTI 3.0, the open standard for questions and tests.

A package is a zip file: `imsmanifest.xml` tells what lies in it, `assessment.xml` is the quiz as
a test, `items/` holds one file for each question and `images/` the drawings.

| our question | item |
|---|---|
| choose, count, sum, which cane, safe or stop | `qti-choice-interaction` |
| name the part | `qti-hotspot-interaction`, one piece |
| put in order | `qti-order-interaction` |
| prune the vine | `qti-hotspot-interaction`, the pieces that no passing pruning keeps; or nothing |

Every answer has its feedback as `qti-modal-feedback`. The test sums the scores of the items by
category, because a must-know question counts apart. What cannot be carried is told with the
package.
"""

from pencilwood.packages.qti.quiz_package import quiz_package

__all__ = ["quiz_package"]
