"""What a claim is about: the part of the dish, the basis, who the subject is, and which words nobody has used."""
