"""The proofs that every case and every rule's example must pass."""

from __future__ import annotations

from pencilwood.proof.case_proof import CaseProof, proof_findings, prove_case
from pencilwood.proof.example_proof import prove_example

__all__ = ["CaseProof", "proof_findings", "prove_case", "prove_example"]
