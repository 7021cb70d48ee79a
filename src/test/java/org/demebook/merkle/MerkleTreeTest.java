package org.demebook.merkle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.demebook.Thorough;
import org.junit.jupiter.api.Test;

/**
 * Leaves, roots and proofs are those of the reference implementation of RFC 6962 (certificate-transparency's merkle_tree_test, today
 * transparency-dev/merkle, testonly); other sizes are held against the RFC's definitions, written down as they stand there.
 */
class MerkleTreeTest {
    private static final HexFormat HEX = HexFormat.of();
    private static final String[] LEAVES = {
        "", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f"
    };
    private static final String[] ROOTS = {
        "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
        "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
        "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
        "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
        "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
        "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
        "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
        "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328"
    };

    @Test
    void roots_are_those_of_the_reference() {
        var tree = new MerkleTree();
        assertThat(HEX.formatHex(tree.root())).isEqualTo(ROOTS[0]);
        for (int size = 1; size <= 8; size++) {
            tree.append(Hashes.leaf(HEX.parseHex(LEAVES[size - 1])));
            assertThat(HEX.formatHex(tree.root())).as("%d leaves", size).isEqualTo(ROOTS[size]);
        }
        for (int size = 0; size <= 8; size++) {
            assertThat(HEX.formatHex(tree.root(size))).isEqualTo(ROOTS[size]);
        }
    }

    @Test
    void audit_paths_are_those_of_the_reference() {
        inclusion(0, 1);
        inclusion(0, 2, "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7");
        inclusion(1, 2, "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d");
        inclusion(2, 3, "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125");
        inclusion(
                1,
                5,
                "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b");
        inclusion(
                0,
                8,
                "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4");
        inclusion(
                5,
                8,
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7");
    }

    @Test
    void consistency_proofs_are_those_of_the_reference() {
        consistency(1, 1);
        consistency(
                1,
                8,
                "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4");
        consistency(
                2,
                5,
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b");
        consistency(
                6,
                8,
                "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7");
    }

    @Test
    void roots_and_proofs_of_every_size_are_those_of_the_definition() {
        int most = Thorough.size("demebook.leaves", 70, 200);
        var leaves = leaves(most, 1);
        var tree = tree(leaves);
        for (int size = 0; size <= most; size++) {
            byte[] root = Rfc6962.root(leaves.subList(0, size));
            assertThat(tree.root(size)).as("%d leaves", size).isEqualTo(root);
            for (int index = 0; index < size; index++) {
                var path = tree.inclusion(index, size);
                assertThat(path)
                        .usingElementComparator(Arrays::compare)
                        .isEqualTo(Rfc6962.path(index, leaves.subList(0, size)));
                assertThat(MerkleTree.includes(leaves.get(index), index, size, path, root))
                        .isTrue();
            }
            for (int from = 0; from <= size; from++) {
                var proof = tree.consistency(from, size);
                assertThat(proof)
                        .usingElementComparator(Arrays::compare)
                        .isEqualTo(Rfc6962.proof(from, leaves.subList(0, size)));
                assertThat(MerkleTree.isConsistent(from, tree.root(from), size, root, proof))
                        .as("%d in %d", from, size)
                        .isTrue();
            }
        }
    }

    @Test
    void a_proof_holds_for_nothing_else() {
        var leaves = leaves(33, 2);
        var tree = tree(leaves);
        byte[] other = Hashes.leaf(new byte[] {9});
        for (int size = 1; size <= 33; size++) {
            byte[] root = tree.root(size);
            for (int index = 0; index < size; index++) {
                byte[] leaf = leaves.get(index);
                var path = tree.inclusion(index, size);
                assertThat(MerkleTree.includes(other, index, size, path, root)).isFalse();
                assertThat(MerkleTree.includes(leaf, index, size, path, other)).isFalse();
                for (int elsewhere = -1; elsewhere <= size; elsewhere++) {
                    assertThat(MerkleTree.includes(leaf, elsewhere, size, path, root))
                            .isEqualTo(elsewhere == index);
                }
                for (var changed : changes(path, other)) {
                    assertThat(MerkleTree.includes(leaf, index, size, changed, root))
                            .isFalse();
                }
            }
            for (int from = 0; from <= size; from++) {
                byte[] fromRoot = tree.root(from);
                var proof = tree.consistency(from, size);
                assertThat(MerkleTree.isConsistent(from, other, size, root, proof))
                        .isFalse();
                assertThat(from != 0 && MerkleTree.isConsistent(from, fromRoot, size, other, proof))
                        .isFalse();
                assertThat(MerkleTree.isConsistent(size + 1, fromRoot, size, root, proof))
                        .isFalse();
                assertThat(MerkleTree.isConsistent(-1, fromRoot, size, root, proof))
                        .isFalse();
                for (var changed : changes(proof, other)) {
                    assertThat(MerkleTree.isConsistent(from, fromRoot, size, root, changed))
                            .isFalse();
                }
            }
        }
    }

    @Test
    void a_rewritten_history_is_consistent_with_no_earlier_head() {
        var honest = leaves(20, 3);
        var before = tree(honest);
        for (int rewritten = 0; rewritten < 12; rewritten++) {
            var forged = new ArrayList<>(honest);
            forged.set(rewritten, Hashes.leaf(new byte[] {1}));
            var tree = tree(forged);
            for (int from = rewritten + 1; from <= 20; from++) {
                assertThat(MerkleTree.isConsistent(
                                from, before.root(from), 20, tree.root(), tree.consistency(from, 20)))
                        .isFalse();
            }
        }
    }

    @Test
    void truncated_and_grown_again_it_is_the_tree_of_what_is_in_it() {
        var leaves = leaves(100, 4);
        var random = new Random(4);
        var tree = tree(leaves);
        for (int i = 0; i < 200; i++) {
            int size = random.nextInt(101);
            tree.truncate(Math.min(size, tree.size()));
            assertThat(tree.root()).isEqualTo(Rfc6962.root(leaves.subList(0, (int) tree.size())));
            while (tree.size() < size) {
                tree.append(leaves.get((int) tree.size()));
            }
            assertThat(tree.root()).isEqualTo(Rfc6962.root(leaves.subList(0, size)));
            assertThat(size == 0 || Arrays.equals(tree.leaf(size - 1), leaves.get(size - 1)))
                    .isTrue();
        }
    }

    @Test
    void a_leaf_hides_its_entry_behind_a_salt() throws NoSuchAlgorithmException {
        byte[] salt = new byte[32];
        salt[0] = 7;
        byte[] entry = "an entry of Marrowfin Cay".getBytes(UTF_8);
        var sha256 = MessageDigest.getInstance("SHA-256");
        sha256.update(salt);
        byte[] salted = sha256.digest(entry);
        assertThat(MerkleTree.digestOf(salt, entry)).isEqualTo(salted);
        sha256.update(new byte[] {0, 1});
        assertThat(MerkleTree.leafOf(true, salted)).isEqualTo(sha256.digest(salted));
        sha256.update(new byte[] {0, 0});
        assertThat(MerkleTree.leafOf(false, salted)).isEqualTo(sha256.digest(salted));
        assertThatThrownBy(() -> MerkleTree.digestOf(new byte[16], entry)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void what_is_not_there_is_not_given() {
        var tree = tree(leaves(3, 5));
        for (Runnable beyond : List.<Runnable>of(
                () -> tree.leaf(3),
                () -> tree.leaf(-1),
                () -> tree.root(4),
                () -> tree.root(-1),
                () -> tree.truncate(4),
                () -> tree.inclusion(3, 3),
                () -> tree.inclusion(0, 0),
                () -> tree.inclusion(0, 4),
                () -> tree.consistency(3, 2),
                () -> tree.consistency(0, 4))) {
            assertThatThrownBy(beyond::run).isInstanceOf(IndexOutOfBoundsException.class);
        }
        assertThatThrownBy(() -> tree.append(new byte[31])).isInstanceOf(IllegalArgumentException.class);
    }

    private static void inclusion(int index, int size, String... path) {
        var tree = referenceTree();
        assertThat(tree.inclusion(index, size).stream().map(HEX::formatHex)).containsExactly(path);
        assertThat(MerkleTree.includes(
                        tree.leaf(index), index, size, tree.inclusion(index, size), HEX.parseHex(ROOTS[size])))
                .isTrue();
    }

    private static void consistency(int from, int to, String... proof) {
        var tree = referenceTree();
        assertThat(tree.consistency(from, to).stream().map(HEX::formatHex)).containsExactly(proof);
        assertThat(MerkleTree.isConsistent(
                        from, HEX.parseHex(ROOTS[from]), to, HEX.parseHex(ROOTS[to]), tree.consistency(from, to)))
                .isTrue();
    }

    private static MerkleTree referenceTree() {
        return tree(Arrays.stream(LEAVES).map(HEX::parseHex).map(Hashes::leaf).toList());
    }

    private static MerkleTree tree(List<byte[]> leaves) {
        var tree = new MerkleTree();
        leaves.forEach(tree::append);
        return tree;
    }

    private static List<byte[]> leaves(int count, long seed) {
        var random = new Random(seed);
        List<byte[]> leaves = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            byte[] leaf = new byte[32];
            random.nextBytes(leaf);
            leaves.add(leaf);
        }
        return leaves;
    }

    /** One hash less, one more, one that is too short, and each exchanged for another. */
    private static List<List<byte[]>> changes(List<byte[]> proof, byte[] other) {
        List<List<byte[]>> changes = new ArrayList<>();
        var longer = new ArrayList<>(proof);
        longer.add(other);
        changes.add(longer);
        for (int i = 0; i < proof.size(); i++) {
            var shorter = new ArrayList<>(proof);
            shorter.remove(i);
            changes.add(shorter);
            for (byte[] instead : new byte[][] {other, new byte[31], new byte[0]}) {
                var exchanged = new ArrayList<>(proof);
                exchanged.set(i, instead);
                changes.add(exchanged);
            }
        }
        return changes;
    }
}
